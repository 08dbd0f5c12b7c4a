import { isInForce } from '../../gestures/bindings.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { Chord, Fallback, Mode, Scheme } from '../../language/model.js';
import type { CoverageCell, VariationCell, Verdict } from '../coverage-model.js';
import type { Facts } from './facts.js';
import type { Hold, Loss, Spoil } from './holds.js';
import type { Situation } from './situations.js';

/** Looks up the facts and spoils of a situation, whoever made its object. */
export interface Ledger {
  factsAt(situation: Situation): Facts | undefined;
  spoilingAt(situation: Situation): readonly Spoiling[];
}

/** A hold that spoils cells. */
type Spoiling = Spoil & { readonly lost: Loss | undefined };

export function createLedger(facts: readonly Facts[], holds: readonly Hold[]): Ledger {
  const keyOf = ({ console, seats, standard }: Situation) =>
    `${console.name}\n${seats.name}\n${standard.name}`;
  const factsBy = new Map(
    facts.flatMap(own => own.offer.situations.map(situation => [keyOf(situation), own] as const)),
  );
  const spoilingBy = new Map<string, Spoiling[]>();
  for (const { spoils, lost, situations } of holds) {
    if (spoils === null) continue;
    const spoiling = { ...spoils, lost };
    for (const situation of situations) {
      const own = spoilingBy.get(keyOf(situation)) ?? [];
      spoilingBy.set(keyOf(situation), own);
      own.push(spoiling);
    }
  }
  return {
    factsAt: situation => factsBy.get(keyOf(situation)),
    spoilingAt: situation => spoilingBy.get(keyOf(situation)) ?? NONE,
  };
}

/** The cells of one situation, one for each mode of the scheme. */
export function cellsOf(situation: Situation, scheme: Scheme, ledger: Ledger): readonly CoverageCell[] {
  const facts = ledger.factsAt(situation);
  const spoiling = ledger.spoilingAt(situation);
  const fallbacks = fallbackClauses(situation.console, scheme);
  const isPlain = spoiling.length === 0 && fallbacks.length === 0;
  return scheme.modes.map(mode => {
    if (!mode.seats.includes(situation.seats)) return notOffered(situation, mode);
    const recipe = facts?.recipes.get(mode) ?? null;
    if (isPlain) return plainCell(situation, mode, 'plays', recipe);
    const here = spoiling.filter(each => each.mode === null || each.mode === mode);
    return {
      ...situation,
      mode,
      verdict: verdictOf(here, fallbacks),
      reasons: [...new Set([...here.map(({ clause }) => clause), ...fallbacks])],
      lostActions: [...new Set(here.flatMap(({ lost }) => (lost?.kind === 'action' ? lost.name : [])))],
      lostValues: here.flatMap(({ lost }) =>
        lost?.kind === 'value' ? { setting: lost.setting, value: lost.value } : [],
      ),
      recipe,
    };
  });
}

const notOffered = (situation: Situation, mode: Mode): CoverageCell =>
  plainCell(situation, mode, 'not offered', null);

const plainCell = (
  { console, seats, standard }: Situation,
  mode: Mode,
  verdict: Verdict,
  recipe: CoverageCell['recipe'],
): CoverageCell => ({
  console,
  seats,
  standard,
  mode,
  verdict,
  reasons: NONE,
  lostActions: NONE,
  lostValues: NONE,
  recipe,
});

const NONE: readonly never[] = [];

function verdictOf(spoils: readonly Spoil[], fallbacks: readonly string[]): Verdict {
  if (spoils.some(({ verdict }) => verdict === 'broken')) return 'broken';
  return spoils.length > 0 || fallbacks.length > 0 ? 'altered' : 'plays';
}

/** One clause for each fallback row in force on a console. */
export function fallbackClauses(profile: ConsoleProfile, scheme: Scheme): readonly string[] {
  return scheme.fallbacks.filter(row => isInForce(row, profile)).map(fallbackClause);
}

function fallbackClause({ subject, instead, without }: Fallback): string {
  const name = subject.kind === 'setting' ? subject.setting.name : subject.action.name;
  if (instead.kind === 'stays') return `without the ${without} switch “${name}” stays “${instead.value}”`;
  const does = subject.kind === 'setting' ? 'is chosen' : 'is done';
  const control = instead.alternatives.map(chordText).join(' or ');
  return `without the ${without} switch “${name}” ${does} with ${control} in “${instead.mode.name}”`;
}

/** A chord as the scheme writes it: `left stick up`, `SELECT + button`. */
const chordText = ({ parts }: Chord): string =>
  parts
    .map(part =>
      part.kind === 'switch'
        ? part.name
        : [part.port ?? '', part.letter, part.name].filter(word => word !== '').join(' '),
    )
    .join(' + ');

/** The variations that are offered to the situation's seats row. */
export function variationCellsOf(
  situation: Situation,
  scheme: Scheme,
  ledger: Ledger,
): readonly VariationCell[] {
  const facts = ledger.factsAt(situation);
  return scheme.variations
    .filter(({ seats }) => seats.includes(situation.seats))
    .map(variation => ({ ...situation, variation, recipe: facts?.variations.get(variation) ?? null }));
}
