// What an order question asks, worked out from procedure.json alone: which card must come before which, and
// whose technique that is. Twin of core/procedure/grade.cpp, written anew so that the two can disagree.

// rules: [{before, after, technique}]. The first rule of a shortest way from one action to another.
function firstRule(rules, from, to) {
  let ways = rules.filter((rule) => rule.before === from).map((rule) => ({ first: rule, at: rule.after }));
  const seen = new Set([from]);
  while (ways.length > 0) {
    const there = ways.find((way) => way.at === to);
    if (there) return there.first;
    const fresh = ways.filter(({ at }) => !seen.has(at));
    for (const { at } of fresh) seen.add(at);
    ways = fresh.flatMap((way) => rules.filter((rule) => rule.before === way.at).map((rule) => ({ first: way.first, at: rule.after })));
  }
  return undefined;
}

// [{before, after, technique}] among the cards: rules as they stand, and chains through cards that are not there.
export function constraintsAmong(rules, cards) {
  const pairs = cards.flatMap((a) => cards.map((b) => [a, b])).filter(([a, b]) => a !== b);
  const must = pairs.filter(([a, b]) => firstRule(rules, a, b) !== undefined);
  const comes = (a, b) => must.some(([c, d]) => c === a && d === b);
  const direct = rules.filter(({ before, after }) => cards.includes(before) && cards.includes(after));
  const isDirect = ([a, b]) => direct.some(({ before, after }) => before === a && after === b);
  const chains = must.filter((pair) => !isDirect(pair) && !cards.some((c) => comes(pair[0], c) && comes(c, pair[1])));
  return [...direct, ...chains.map(([before, after]) => ({ before, after, technique: firstRule(rules, before, after).technique }))];
}

function* orders(cards) {
  if (cards.length === 0) yield [];
  for (const [n, card] of cards.entries()) {
    for (const rest of orders(cards.filter((_, m) => m !== n))) yield [card, ...rest];
  }
}

const broken = (constraints, order) =>
  constraints.filter(({ before, after }) => order.indexOf(before) > order.indexOf(after));

// The order that breaks most of these techniques' rules and none of the others'; with no technique named, one that
// breaks nothing. undefined: there is none.
export function orderThatLacks(rules, cards, lacks) {
  const constraints = constraintsAmong(rules, cards);
  let best, most = lacks.length > 0 ? 0 : -1;
  for (const order of orders(cards)) {
    const lapses = broken(constraints, order);
    if (lapses.length <= most || lapses.some(({ technique }) => !lacks.includes(technique))) continue;
    [best, most] = [order, lapses.length];
  }
  return best;
}
