import type { Place } from '../../../findings/place.js';
import type { Binding } from '../../../gestures/bindings.js';
import { isInForce } from '../../../gestures/bindings.js';
import type { SwitchName } from '../../../hardware/switches.js';
import type { BindingRow, Fallback, Mode } from '../../../language/model.js';
import { createMemory } from '../../../memory.js';
import type { Facts } from '../facts.js';
import { type Hold, keyOf } from '../holds.js';
import type { OfferedMode } from '../offers.js';
import type { Situation } from '../situations.js';
import type { Survey } from '../survey.js';

/** dead-binding, behind-the-console. */
export function rowHolds(survey: Survey): readonly Hold[] {
  const alive = aliveIn(survey.facts);
  return [
    ...deadRows(survey, alive),
    ...deadFallbacks(survey, alive),
    ...survey.facts.flatMap(behindTheConsole),
  ];
}

/** Where a mode is reachable. */
const situationsIn = (mode: Mode, facts: readonly Facts[]): readonly Situation[] =>
  facts.filter(({ recipes }) => recipes.has(mode)).flatMap(({ offer }) => offer.situations);

interface Alive {
  /** The rows and fallbacks that can be done somewhere; a row that only a fallback stands for is not among them. */
  readonly done: ReadonlySet<BindingRow | Fallback | null>;
  /** Rows that a fallback stands for somewhere. */
  readonly stoodFor: ReadonlySet<BindingRow | null>;
}

function aliveIn(facts: readonly Facts[]): Alive {
  // Many situations share a set.
  const usable = new Set(facts.flatMap(own => [...own.usable.values()]));
  const done = new Set<BindingRow | Fallback | null>();
  const stoodFor = new Set<BindingRow | null>();
  for (const doings of usable)
    for (const { row, fallback } of doings) {
      done.add(fallback ?? row);
      if (fallback !== null) stoodFor.add(row);
    }
  return { done, stoodFor };
}

/** In a mode that is reachable nowhere no row is dead: such a hold is in no situation, and is not told. */
function deadRows({ scheme, facts }: Survey, { done, stoodFor }: Alive): readonly Hold[] {
  return scheme.modes.flatMap(mode => {
    const situations = situationsIn(mode, facts);
    const dead = mode.rows.filter(row => !done.has(row));
    return dead.map(row =>
      deadHold(
        { at: row.at, mode, action: row.action.name, key: `${row.index}` },
        situations,
        stoodFor.has(row) ? STOOD_FOR_WAYS : rowWays(row, mode),
      ),
    );
  });
}

/** A fallback that is in force nowhere has nothing to do, and so can't fail to do it. */
function deadFallbacks({ scheme, facts }: Survey, { done }: Alive): readonly Hold[] {
  return scheme.fallbacks.flatMap((fallback, index) => {
    const { instead } = fallback;
    if (instead.kind !== 'binding' || done.has(fallback)) return [];
    const forced = facts.filter(({ offer }) => isInForce(fallback, offer.console));
    const situations = situationsIn(instead.mode, forced);
    return [
      deadHold(
        { at: fallback.at, mode: instead.mode, action: subjectName(fallback), key: `fallback ${index}` },
        situations,
        fallbackWays(fallback, instead.mode),
      ),
    ];
  });
}

const subjectName = ({ subject }: Fallback): string =>
  subject.kind === 'action' ? subject.action.name : `${subject.setting.name}: next`;

/** What can never be done. */
interface Dead {
  readonly at: Place;
  readonly mode: Mode;
  readonly action: string;
  /** What it is in its mode, told apart from all others. */
  readonly key: string;
}

/** For a row that can be done nowhere as it is, but by a fallback that stands for it. */
const STOOD_FOR_WAYS = [
  'Wherever this can be done, it is by its row of `## Fallbacks`: write in this row what stands there, and take the fallback out.',
  'If the game is meant for a console on which the row can be done as it is, add it to `Consoles`.',
];

/** What of a row can be the reason: its `When`, and who does it with what. */
function rowWays({ conditions, gesture }: BindingRow, { name }: Mode): readonly string[] {
  return [
    ...(conditions.length === 0
      ? []
      : [`Change its \`When\` to settings that occur in “${name}”, or let a row set them.`]),
    ...(gesture === null
      ? []
      : [
          `Check \`Who\`, \`Control\` and \`Gesture\`: no seats row of “${name}” may have that player with that control, or nobody can make the gesture with it.`,
        ]),
    'Delete the row.',
  ];
}

function fallbackWays({ subject, without }: Fallback, mode: Mode): readonly string[] {
  const needsIt = ({ action, alternatives }: BindingRow): boolean =>
    subject.kind === 'action' &&
    action === subject.action &&
    alternatives.some(({ parts }) => parts.some(part => part.kind === 'switch' && part.name === without));
  const hasNone = subject.kind === 'action' && !mode.rows.some(needsIt);
  return [
    hasNone
      ? `No row of “${subject.action.name}” in “${mode.name}” needs ${without}, so there is nothing to stand for: name a mode that has one.`
      : `Check its control: no seats row of “${mode.name}” may have it.`,
    'Take the row out of `## Fallbacks`.',
  ];
}

function deadHold(
  { at, mode, action, key }: Dead,
  situations: readonly Situation[],
  waysOut: readonly string[],
): Hold {
  return {
    rule: 'dead-binding',
    key: keyOf(mode.name, action, key),
    situations,
    spoils: null,
    tell: (report, { details }) =>
      report(
        'dead-binding',
        at,
        { mode: mode.name, action },
        {
          mode: mode.name,
          actions: [action],
          ...details,
          waysOut,
        },
      ),
  };
}

function behindTheConsole({ offer }: Facts): readonly Hold[] {
  return [...offer.modes]
    .filter(([mode]) => mode.kind === 'play')
    .flatMap(([mode, offered]) =>
      switchUses(offered).flatMap(({ binding, name }) => {
        const situations = offer.situations.filter(each => each.console.switches[name].kind === 'rear');
        return situations.length === 0 ? [] : [rearHold(mode, binding, name, situations)];
      }),
    );
}

interface SwitchUse {
  readonly binding: Binding;
  readonly name: SwitchName;
}

const remembered = createMemory<readonly SwitchUse[]>();

/** What can be done with a switch of the panel. */
const switchUses = (offered: OfferedMode): readonly SwitchUse[] =>
  remembered([offered], () =>
    offered.possible.flatMap(binding =>
      binding.parts.flatMap(part => (part.kind === 'switch' ? [{ binding, name: part.name }] : [])),
    ),
  );

function rearHold(mode: Mode, binding: Binding, name: SwitchName, situations: readonly Situation[]): Hold {
  const { actionName, at, player } = binding;
  return {
    rule: 'behind-the-console',
    key: keyOf(mode.name, actionName, player, name),
    situations,
    spoils: { verdict: 'altered', mode, clause: `“${actionName}” is on the ${name} switch, at the rear` },
    tell: (report, { text, details }) =>
      report(
        'behind-the-console',
        at,
        { mode: mode.name, action: actionName, switch: name, where: text },
        { mode: mode.name, players: [player], actions: [actionName], controls: [name], ...details },
      ),
  };
}
