import { isInForce } from '../../../gestures/bindings.js';
import type { Mode, Scheme, Setting, Variation } from '../../../language/model.js';
import type { Facts } from '../facts.js';
import { type Hold, keyOf } from '../holds.js';
import type { Survey } from '../survey.js';

/** unreachable-mode, unreachable-variation, no-way-out, no-fresh-start. */
export function reachHolds({ scheme, facts }: Survey): readonly Hold[] {
  return facts.flatMap(own => [
    ...unreachableModes(own),
    ...unreachableVariations(own, scheme),
    ...stuckModes(own),
    ...staleModes(own, scheme),
  ]);
}

function unreachableModes({ offer, recipes }: Facts): readonly Hold[] {
  const missed = [...offer.modes.keys()].filter(mode => !recipes.has(mode));
  return missed.map(mode => ({
    rule: 'unreachable-mode',
    key: mode.name,
    situations: offer.situations,
    spoils: { verdict: 'broken', mode, clause: 'can’t be reached' },
    tell: (report, { text, details }) =>
      report('unreachable-mode', mode.at, { mode: mode.name, where: text }, { mode: mode.name, ...details }),
  }));
}

function unreachableVariations(own: Facts, scheme: Scheme): readonly Hold[] {
  const missed = [...own.variations].filter(
    ([variation, recipe]) => recipe === null && !isDeclared(variation, own, scheme),
  );
  return missed.map(([variation]) => ({
    rule: 'unreachable-variation',
    key: variation.name,
    situations: own.offer.situations,
    spoils: null,
    tell: (report, { text, details }) => {
      const parameters = { variation: variation.name, where: text };
      const missing = missingValues(variation, own);
      report('unreachable-variation', variation.at, parameters, {
        variation: variation.name,
        ...(missing.length === 0 ? {} : namesOf(missing)),
        ...details,
        waysOut: [...missing.map(needText), ...GENERAL_WAYS],
      });
    },
  }));
}

const GENERAL_WAYS = [
  'Let a row, a switch or a fallback give each setting the value that the variation needs, before a `play` mode begins.',
  'If the loss is intended, say so in `## Fallbacks` with `stays VALUE`, or offer the variation to fewer seats rows.',
];

/** A `stays` row that is in force holds one of its settings at another value. */
function isDeclared(variation: Variation, { offer }: Facts, scheme: Scheme): boolean {
  return scheme.fallbacks.some(fallback => {
    const { instead, subject } = fallback;
    if (instead.kind !== 'stays' || subject.kind !== 'setting') return false;
    const wanted = variation.values.get(subject.setting);
    return wanted !== undefined && wanted !== instead.value && isInForce(fallback, offer.console);
  });
}

type Needed = readonly [Setting, string];

const missingValues = ({ values }: Variation, own: Facts): readonly Needed[] =>
  [...values].filter(([setting, value]) => own.values.get(setting)?.has(value) !== true);

const namesOf = (missing: readonly Needed[]) => ({
  settings: [...new Set(missing.map(([{ name }]) => name))],
  values: [...new Set(missing.map(([, value]) => value))],
});

const needText = ([{ name }, value]: Needed): string =>
  `Let something make “${name}” “${value}”: nothing does that there.`;

function stuckModes({ offer, stuck }: Facts): readonly Hold[] {
  return [...stuck].map(([mode, state]) => ({
    rule: 'no-way-out',
    key: mode.name,
    situations: offer.situations,
    spoils: { verdict: 'broken', mode, clause: `no way out${state}` },
    tell: (report, { text, details }) =>
      report('no-way-out', mode.at, { mode: mode.name, state, where: text }, { mode: mode.name, ...details }),
  }));
}

function staleModes({ offer, stale }: Facts, scheme: Scheme): readonly Hold[] {
  const start = scheme.startMode.name;
  return [...stale].map(([mode, state]: [Mode, string]) => ({
    rule: 'no-fresh-start',
    key: keyOf(mode.name),
    situations: offer.situations,
    spoils: { verdict: 'altered', mode, clause: `no way back to “${start}” or a menu${state}` },
    tell: (report, { text, details }) =>
      report(
        'no-fresh-start',
        mode.at,
        { mode: mode.name, state, start, where: text },
        { mode: mode.name, ...details },
      ),
  }));
}
