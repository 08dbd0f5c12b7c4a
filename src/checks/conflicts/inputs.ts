import type { Program, ProgramContact } from './program.js';

/** All contacts at one read, a bit each: engaged, or a switch's position; a knob's bit changes when it is turned. */
export type Levels = number;

/**
 * The feasible inputs of a program: which levels there are, and which can follow which. At each read at most one
 * control becomes engaged, one switch is moved or one knob turned; any number may be let go. Opposite directions
 * are never engaged together.
 *
 * Contacts that belong to the same bindings can't be told apart by any gesture, so they are engaged in their
 * order and let go in the opposite one: every other sequence has one of these that fires the same.
 */
export interface Inputs {
  readonly levels: readonly Levels[];
  /** Indices of levels that can be read first. */
  readonly first: readonly number[];
  /** By index of levels: indices of those that can be read next, calm ones first. */
  readonly next: readonly (readonly number[])[];
}

/**
 * @param allowed the contacts that may be engaged or moved, a bit each
 * @param standing switches that stay where they stand, in any position they can be in from the start
 */
export function feasibleInputs(program: Program, allowed: number, standing = 0): Inputs {
  const looked = allowed | standing;
  const groups = groupContacts(program, looked);
  const levels = allLevels(groups, program.contacts);
  const frozen = bitsOf(program.contacts, contact => contact.isFrozen);
  const fixed = bitsOf(program.contacts, contact => contact.isFixed) | standing;
  const momentary = bitsOf(program.contacts, contact => contact.type === 'momentary');
  const canFollow = (before: Levels, after: Levels): boolean => {
    const changed = before ^ after;
    if ((changed & fixed) !== 0) return false;
    const begun = (after & ~before & momentary) | (changed & ~momentary);
    return (begun & (begun - 1)) === 0;
  };
  const startsOf = (value: Levels) =>
    program.contacts.every(
      ({ type, starts }, index) =>
        type === 'momentary' || ((looked >> index) & 1) === 0 || starts.includes((value >> index) & 1),
    );
  const starting = levels.filter(value => (value & momentary) === 0 && startsOf(value));
  const isInBounds = (value: Levels) => starting.some(start => ((start ^ value) & frozen) === 0);
  const indicesOf = (test: (after: Levels) => boolean) =>
    levels.flatMap((after, index) => (test(after) ? [index] : []));
  return {
    levels,
    first: indicesOf(after =>
      starting.some(start => start === (after & ~momentary) && canFollow(start, after)),
    ),
    next: levels.map(before => {
      if (!isInBounds(before)) return [];
      const after = indicesOf(value => canFollow(before, value));
      return after.toSorted((a, b) => unrest(before, levels[a]) - unrest(before, levels[b]));
    }),
  };
}

/** What the player does from one read to the next: nothing, best of all; letting go counts a little more. */
function unrest(before: Levels, after: Levels | undefined): number {
  if (after === undefined) return 0;
  return 2 * countBits(before ^ after) + (countBits(before & ~after) > 0 ? 1 : 0);
}

function countBits(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}

function bitsOf(contacts: readonly ProgramContact[], test: (contact: ProgramContact) => boolean): number {
  return contacts.reduce((bits, contact, index) => (test(contact) ? bits | (1 << index) : bits), 0);
}

/** Contacts by the bindings they belong to; what has an opposite, a position or a knob stands alone. */
function groupContacts(program: Program, looked: number): readonly (readonly number[])[] {
  const { contacts, x, y, holdBacks } = program;
  const masks = [x.mask, y?.mask ?? 0, ...holdBacks.flatMap(({ holder, until }) => [holder.mask, until])];
  const groups = new Map<string, number[]>();
  contacts.forEach(({ type, opposite }, index) => {
    if ((looked & (1 << index)) === 0) return;
    const isAlone = type !== 'momentary' || opposite !== null;
    const key = isAlone ? `alone ${index}` : masks.map(mask => (mask >> index) & 1).join('');
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [index]);
    else group.push(index);
  });
  return [...groups.values()];
}

/** Every set of engaged contacts that keeps to the order within the groups and holds no opposites. */
function allLevels(
  groups: readonly (readonly number[])[],
  contacts: readonly ProgramContact[],
): readonly Levels[] {
  let levels: readonly Levels[] = [0];
  for (const group of groups) {
    const prefixes = group.map((_, count) =>
      group.slice(0, count + 1).reduce((bits, index) => bits | (1 << index), 0),
    );
    levels = levels.flatMap(value => [value, ...prefixes.map(prefix => value | prefix)]);
  }
  return levels.filter(value =>
    contacts.every(
      ({ opposite }, index) => opposite === null || ((value >> index) & (value >> opposite) & 1) === 0,
    ),
  );
}
