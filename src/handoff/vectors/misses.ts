import type { Binding } from '../../gestures/bindings.js';
import type { Play } from '../../gestures/play.js';
import type { Unit } from '../units.js';
import {
  elsewhere,
  gestureReads,
  isMomentary,
  isSame,
  partIndices,
  readsOfBinding,
  withLevels,
} from './sequences.js';
import { beginning, type Shortest } from './shortest.js';
import { findSituation, type Levels, restLevels, runReads, type Situation } from './situation.js';

export type MissKind =
  | 'one read short'
  | 'one read long'
  | 'part missing'
  | 'wrong position'
  | 'wrong player'
  | 'when false'
  | 'entered engaged';

/** The nearest misses of a binding: what comes close to its shortest sequence and does not do it. */
export function missesOf(play: Play, unit: Unit, binding: Binding, shortest: Shortest): readonly Miss[] {
  const all = [
    ...timedMisses(play, binding, shortest.situation),
    ...otherMisses(play, binding, shortest.situation, shortest.reads),
    ...whenMisses(play, unit, binding, shortest.reads),
  ];
  return all.filter(miss => isMiss(play, binding, miss));
}

export interface Miss {
  readonly kind: MissKind;
  readonly situation: Situation;
  readonly reads: readonly Levels[];
}

/** True where the miss is one: the binding fires no more often than the near miss is allowed to. */
function isMiss(play: Play, binding: Binding, { kind, situation, reads }: Miss): boolean {
  const { fired } = runReads(play, situation, reads);
  if (fired.length < reads.length && kind === 'one read long') return false;
  const count = fired.filter(list => list.some(each => isSame(each, binding))).length;
  const oncePerEngagement =
    kind === 'one read long' && (binding.gesture.kind === 'hold' || binding.gesture.kind === 'repeat');
  if (kind === 'entered engaged') return true;
  return oncePerEngagement ? count === 1 : count === 0;
}

/** One read short of the time, one read too long, then let go. */
function timedMisses(play: Play, binding: Binding, situation: Situation): readonly Miss[] {
  const order = partIndices(play, binding);
  const reads = readsOfBinding(play, binding);
  const { before } = situation;
  const made = (count: number) => gestureReads(play, binding, before, order, count);
  const letGo = (list: readonly Levels[]) => [...list, before];
  const held = (list: readonly Levels[], count: number) => [
    ...list,
    ...Array.from({ length: count }, () => list.at(-1) ?? before),
  ];
  switch (binding.gesture.kind) {
    case 'hold':
      return [
        ...(reads > 1 ? [{ kind: 'one read short' as const, situation, reads: letGo(made(reads - 1)) }] : []),
        { kind: 'one read long', situation, reads: letGo(held(made(reads), 1)) },
      ];
    case 'tap':
      return [{ kind: 'one read long', situation, reads: made(reads + 1) }];
    case 'double tap':
      return [{ kind: 'one read long', situation, reads: made(reads + 1) }];
    case 'repeat':
      return reads > 1
        ? [{ kind: 'one read long', situation, reads: letGo(held(made(reads), reads - 1)) }]
        : [];
    default:
      return [];
  }
}

function otherMisses(
  play: Play,
  binding: Binding,
  situation: Situation,
  shortest: readonly Levels[],
): readonly Miss[] {
  const order = partIndices(play, binding);
  const { before } = situation;
  const [index] = order;
  if (index === undefined) return [];
  if (!isMomentary(play, index)) return positionMisses(play, binding, situation, index);
  const reads = readsOfBinding(play, binding);
  const missing = order.slice(0, -1);
  const parts: readonly Miss[] =
    missing.length > 0
      ? [
          {
            kind: 'part missing',
            situation,
            reads: gestureReads(play, binding, before, missing, Math.max(2, reads)),
          },
        ]
      : [];
  const last = shortest.at(-1) ?? before;
  const all = withLevels(before, new Map(order.map(part => [part, 1])));
  const engagedBefore: Situation = { ...situation, before: all };
  const long = Math.max(2, reads);
  const carried = [...Array.from({ length: long }, () => all), before];
  return [
    ...parts,
    ...otherPlayers(play, binding, shortest).map(made => ({
      kind: 'wrong player' as const,
      situation,
      reads: made,
    })),
    {
      kind: 'entered engaged',
      situation: engagedBefore,
      reads: last === before ? [...carried, before] : carried,
    },
  ];
}

/** The switch stays in, or goes to, the other position; what turns is left alone. */
function positionMisses(play: Play, binding: Binding, situation: Situation, index: number): readonly Miss[] {
  const { kind } = binding.gesture;
  const other = withLevels(situation.before, new Map([[index, 1 - (situation.before[index] ?? 0)]]));
  if (kind === 'at')
    return [{ kind: 'wrong position', situation: { ...situation, before: other }, reads: [other, other] }];
  if (kind === 'flip to') {
    const away = elsewhere(play, binding, situation.before);
    const there = withLevels(away, new Map([[index, 1 - (away[index] ?? 0)]]));
    return [{ kind: 'wrong position', situation: { ...situation, before: there }, reads: [there, away] }];
  }
  return [{ kind: 'wrong position', situation, reads: [situation.before, situation.before] }];
}

/** The same controls in the other seats. */
function otherPlayers(
  play: Play,
  binding: Binding,
  reads: readonly Levels[],
): readonly (readonly Levels[])[] {
  const own = binding.parts.filter(part => part.kind === 'control');
  const seats = [
    ...new Set(play.contacts.flatMap(contact => (contact.kind === 'control' ? [seatOf(contact)] : []))),
  ];
  const base = restLevels(play);
  return seats.flatMap(seat => {
    if (own.length === 0 || own.some(part => seatOf(part) === seat)) return [];
    const swaps = new Map<number, number>();
    for (const part of own) {
      const from = play.contacts.findIndex(({ id }) => id === part.id);
      const to = play.contacts.findIndex(
        contact =>
          contact.kind === 'control' &&
          seatOf(contact) === seat &&
          contact.control.name === part.control.name,
      );
      if (to < 0) return [];
      swaps.set(from, to);
    }
    return [reads.map(levels => swapped(levels, swaps, base))];
  });
}

const seatOf = (contact: {
  readonly kind: string;
  readonly port?: string;
  readonly control?: { readonly seat: string };
}) => `${contact.port ?? ''} ${contact.control?.seat ?? ''}`;

function swapped(levels: Levels, swaps: ReadonlyMap<number, number>, base: Levels): Levels {
  const changes = new Map<number, number>();
  for (const from of swaps.keys()) changes.set(from, base[from] ?? 0);
  for (const [from, to] of swaps) changes.set(to, levels[from] ?? 0);
  return withLevels(levels, changes);
}

function whenMisses(play: Play, unit: Unit, binding: Binding, shortest: readonly Levels[]): readonly Miss[] {
  return binding.conditions.flatMap(condition => {
    const situation = findSituation(play, unit.mode, binding.conditions, condition);
    if (situation === null) return [];
    const own = new Set(partIndices(play, binding));
    const reads = shortest.map(levels =>
      situation.before.map((level, index) => (own.has(index) ? (levels[index] ?? 0) : level)),
    );
    return [{ kind: 'when false' as const, situation: beginning(play, binding, situation, reads), reads }];
  });
}
