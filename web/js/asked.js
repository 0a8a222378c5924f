// What the app asks of the page once in a while: parts that few people need are loaded when first asked for.
// Also the code that came in the link. Must not know what codes and sheets say.

import { SEPARATOR } from './bridge.js';

const CUT_OFF = '-';  // a link that ends after '=': told as any other that is not whole
const MOST_LETTERS = 5000;  // more than any code has (core/exchange/envelope.h); says so itself

// What an address can ask for: a result (#r=), a set practice (#a=), a sealed result (#s=), the numbers of an inhaler
// (#c=), to set a practice (#set), the educator's desk (#desk), a shared device (#kiosk). The last three stay: they can be kept as bookmarks.
const ASKS = /^#(?:([racs])=|(set|desk|kiosk)$)/;

// Another link opened in this tab: at once, unless a run would be lost; then it waits in the address. A shared device
// stays one, whatever is opened on it.
export function listenForLinks(isBusy) {
  const isShared = location.hash === '#kiosk';
  addEventListener('hashchange', () => {
    if (isShared) history.replaceState(history.state, '', `${location.pathname}${location.search}#kiosk`);
    else if (ASKS.test(location.hash) && !isBusy()) location.reload();
  });
}

// ['r', code]; ['set', '1']. Codes are read once, and dropped from the address: they shall not stay in the history.
export function takeAsk() {
  const found = ASKS.exec(location.hash);
  if (!found) return ['r', ''];
  if (found[2]) return [found[2], '1'];
  const code = location.hash.slice(3, 3 + MOST_LETTERS) || CUT_OFF;
  history.replaceState(history.state, '', location.pathname + location.search);
  return [found[1], code];
}

const SEALING = ['seal', 'makeKey', 'useKey', 'unlock', 'openSealed', 'lock'];
const KEEPING = ['kept', 'keepResults', 'forget', 'open'];

// Parts that few people need come by themselves.
function partOf(name) {
  if (name.startsWith('desk')) return import('./later/desk.js');
  if (KEEPING.includes(name)) return import('./later/keep.js');
  return SEALING.includes(name) ? import('./later/sealing.js') : import('./later/hand_over.js');
}

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
