// What the app asks of the page once in a while: parts that few people need are loaded when first asked for.
// Also the code that came in the link. Must not know what codes and sheets say.

import { SEPARATOR } from './bridge.js';

const MOST_LETTERS = 5000;  // more than any code has (core/exchange/envelope.h); says so itself

// What a link may bring: #r= a result, #c= the numbers of an inhaler.
export const hasCode = () => /^#[rc]=/.test(location.hash);

// Read once, and dropped from the address: it shall not stay in the history. '#r=R1…', or '' where there is none.
export function takeCode() {
  if (!hasCode()) return '';
  const code = location.hash.slice(0, 3 + MOST_LETTERS);
  history.replaceState(history.state, '', location.pathname + location.search);
  return code;
}

// Two parts, so that who keeps nothing and who hands nothing over does not load it.
const KEEPING = new Set(['kept', 'keep', 'forget', 'open']);
const partWith = (name) => (KEEPING.has(name) ? import('./later/keep.js') : import('./later/hand_over.js'));

export async function answerAsk(bridge, text, ticket) {
  const [name, words] = text.split(SEPARATOR);
  let code = 'network';
  try {
    const { services } = await partWith(name);
    code = 'refused';
    bridge.hear('fetched', await services[name](words), ticket);
  } catch (error) {
    bridge.hear('fetchFailed', [code, name, String(error?.message ?? error)].join(SEPARATOR), ticket);
  }
}
