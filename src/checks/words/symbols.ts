import { type FindingDetails, relatedTo } from '../../findings/finding.js';
import type { Place } from '../../findings/place.js';
import type { Report } from '../../findings/report.js';
import type { Scheme } from '../../language/model.js';
import { symbolOf, symbolPart } from '../../language/symbol.js';
import { boundSymbols, mayRunTogether } from './bound-symbols.js';
import { REGISTER_NAMES } from './register-names.js';

/** A name, or several together, that make a symbol. */
interface Named {
  /** For messages: `the mode “Laid to”`, `“Steer” in Harbour`. */
  readonly what: string;
  readonly symbol: string;
  readonly at: Place;
  readonly details: FindingDetails;
  /** The symbol’s parts: where two have the same, their names are alike and reported as such. */
  readonly parts: string;
}

/** `symbol-clash`: names that are alike as symbols, then symbols that are alike though their names are not. */
export function checkSymbols(scheme: Scheme, report: Report): void {
  checkRegisters(scheme, report);
  for (const names of [seatsOf(scheme), settingsOf(scheme), actionsOf(scheme), modesOf(scheme)]) {
    reportAlike(names, () => true, report);
  }
  reportAlike(valuesOf(scheme), () => true, report);
  if (mayRunTogether(scheme))
    reportAlike(boundOf(scheme), (first, second) => first.parts !== second.parts, report);
}

function checkRegisters(scheme: Scheme, report: Report): void {
  const { value, at } = scheme.game.shortName;
  const symbol = value.toUpperCase();
  if (!REGISTER_NAMES.has(symbol)) return;
  report('symbol-clash', at, { second: `The short name “${value}”`, symbol, first: 'a hardware register' });
}

/** Reports each name at the first one before it that has its symbol. */
function reportAlike(
  names: readonly Named[],
  isClash: (first: Named, second: Named) => boolean,
  report: Report,
): void {
  const earlier = new Map<string, Named>();
  for (const second of names) {
    const first = earlier.get(second.symbol);
    if (first === undefined) earlier.set(second.symbol, second);
    else if (isClash(first, second)) reportClash(first, second, report);
  }
}

function reportClash(first: Named, { symbol, what, at, details }: Named, report: Report): void {
  const second = what.charAt(0).toUpperCase() + what.slice(1);
  const related = [relatedTo(first.at, `${first.what} makes it here`)];
  report('symbol-clash', at, { second, symbol, first: first.what }, { ...details, related });
}

const named = (kind: string, name: string, at: Place, details: FindingDetails): Named => ({
  what: `the ${kind} “${name}”`,
  symbol: symbolPart(name),
  at,
  details,
  parts: symbolPart(name),
});

function seatsOf({ seats }: Scheme): readonly Named[] {
  return seats.map(({ name, at }) => named('seats row', name, at, { seats: [name] }));
}

function settingsOf({ settings }: Scheme): readonly Named[] {
  return settings.map(({ name, at }) => named('setting', name, at, { settings: [name] }));
}

/** All actions, bound or not. */
function actionsOf({ actions }: Scheme): readonly Named[] {
  return actions.map(({ name, at }) => named('action', name, at, { actions: [name] }));
}

function modesOf({ modes }: Scheme): readonly Named[] {
  return modes.map(({ name, at }) => named('mode', name, at, { mode: name }));
}

/** The values of each setting; of settings that are alike only the first, as the others are reported. */
function valuesOf({ settings }: Scheme): readonly Named[] {
  const first = settings.filter(
    ({ name }, index) => settings.findIndex(other => symbolPart(other.name) === symbolPart(name)) === index,
  );
  return first.flatMap(({ name, at, values }) =>
    values.map(value => ({
      what: `the value “${value}” of “${name}”`,
      symbol: symbolOf(name, value),
      at,
      details: { settings: [name], values: [value] },
      parts: '',
    })),
  );
}

/** By player and direction: ` (left, up)`. */
const toldApart = (names: readonly string[]): string => (names.length === 0 ? '' : ` (${names.join(', ')})`);

function boundOf(scheme: Scheme): readonly Named[] {
  return boundSymbols(scheme).map(({ names, symbol, mode, action, at }) => ({
    what: `“${action}”${toldApart(names.slice(2))} in ${mode}`,
    symbol,
    at,
    details: { mode, actions: [action] },
    parts: names.map(symbolPart).join('\n'),
  }));
}
