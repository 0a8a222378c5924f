// What the app asks of the page once in a while: parts that few people need are loaded when first asked for.
// Also the code of a result that came in the link. Must not know what codes and sheets say.

import { SEPARATOR } from './bridge.js';

const MOST_LETTERS = 5000;  // more than any code has (core/exchange/envelope.h); says so itself

// Read once, and dropped from the address: it shall not stay in the history.
export function takeCode() {
  if (!location.hash.startsWith('#r=')) return '';
  const code = location.hash.slice(3, 3 + MOST_LETTERS);
  history.replaceState(history.state, '', location.pathname + location.search);
  return code;
}

// The educator's desk has an address of its own, which stays: it can be kept as a bookmark.
export const wantsDesk = () => (location.hash === '#desk' ? '1' : '');

// The desk's part comes by itself: few people need it.
const partOf = (name) => (name.startsWith('desk') ? import('./later/desk.js') : import('./later/hand_over.js'));

// near: services that need no fetching.
export async function answerAsk(bridge, text, ticket, near) {
  const [name, words] = text.split(SEPARATOR);
  let code = 'network';
  try {
    const services = near[name] ? near : (await partOf(name)).services;
    code = 'refused';
    bridge.hear('fetched', await services[name](words), ticket);
  } catch (error) {
    bridge.hear('fetchFailed', [code, name, String(error?.message ?? error)].join(SEPARATOR), ticket);
  }
}
