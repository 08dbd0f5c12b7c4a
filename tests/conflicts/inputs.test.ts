import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feasibleInputs } from '../../src/checks/conflicts/inputs.js';
import type { Program, ProgramContact } from '../../src/checks/conflicts/program.js';

/** Levels of all contacts at one read, as the design page speaks of them: by contact. */
type Read = readonly number[];

const plain: ProgramContact = {
  type: 'momentary',
  starts: [0],
  isFixed: false,
  isFrozen: false,
  opposite: null,
};

/** One binding on all contacts; each contact holds it back by itself, so that no two of them are alike. */
function programOn(contacts: readonly ProgramContact[]): Program {
  return {
    contacts,
    x: { kind: 'press', reads: 1, mask: 2 ** contacts.length - 1, wanted: null, goesTo: false },
    y: null,
    holdBacks: contacts.map((_, index) => ({
      target: 'x',
      holder: { kind: 'press', mask: 1 << index, wanted: null },
      until: 1 << index,
    })),
  };
}

/** SEMANTICS, “Lines and feasible inputs”, once more: written out read by read. */
function naiveInputs(contacts: readonly ProgramContact[], allowed: readonly boolean[]) {
  const everyRead = contacts
    .reduce<readonly Read[]>(
      (reads, _, index) =>
        reads.flatMap(read => (allowed[index] === true ? [0, 1] : [0]).map(level => [...read, level])),
      [[]],
    )
    .filter(read =>
      contacts.every(({ opposite }, index) => opposite === null || read[index] !== 1 || read[opposite] !== 1),
    );
  const isSwitch = (index: number) => contacts[index]?.type === 'two-position' && allowed[index] === true;
  const isStart = (read: Read) =>
    contacts.every(({ starts }, index) => !isSwitch(index) || starts.some(start => start === read[index]));
  const isKept = (read: Read) =>
    contacts.every(
      ({ starts, isFrozen }, index) =>
        !isSwitch(index) || !isFrozen || starts.some(start => start === read[index]),
    );
  /** How many contacts are worked on from one read to the next, and how many of these are let go. */
  const work = (before: Read, after: Read) => ({
    begun: contacts.filter(
      ({ type }, index) => before[index] !== after[index] && (type !== 'momentary' || after[index] === 1),
    ).length,
    released: contacts.filter(
      ({ type }, index) => type === 'momentary' && before[index] === 1 && after[index] === 0,
    ).length,
  });
  const first = everyRead.filter(
    read =>
      isStart(read) &&
      contacts.filter(({ type }, index) => type === 'momentary' && read[index] === 1).length <= 1,
  );
  const next = (before: Read) =>
    isKept(before)
      ? everyRead.filter(
          after =>
            contacts.every(({ isFixed }, index) => !isFixed || before[index] === after[index]) &&
            work(before, after).begun <= 1,
        )
      : [];
  return { everyRead, first, next, work };
}

const someContacts: fc.Arbitrary<readonly ProgramContact[]> = fc
  .record({
    buttons: fc.integer({ min: 1, max: 3 }),
    opposites: fc.boolean(),
    toggles: fc.array(
      fc.record({
        starts: fc.constantFrom<readonly number[]>([0], [1], [0, 1]),
        isFixed: fc.boolean(),
        isFrozen: fc.boolean(),
      }),
      { maxLength: 2 },
    ),
    knob: fc.boolean(),
  })
  .map(({ buttons, opposites, toggles, knob }) => [
    ...Array.from({ length: buttons }, (_, index) => ({
      ...plain,
      opposite: opposites && buttons > 1 && index < 2 ? 1 - index : null,
    })),
    // A fixed switch has one position to begin in.
    ...toggles.map(({ starts, ...toggle }) => ({
      ...plain,
      type: 'two-position' as const,
      starts: toggle.isFixed ? starts.slice(0, 1) : starts,
      ...toggle,
    })),
    ...(knob ? [{ ...plain, type: 'turning' as const }] : []),
  ]);

const text = (reads: readonly Read[]) => reads.map(read => read.join('')).sort();

describe('feasible inputs', () => {
  it('are those of the design page, for all kinds of contacts', () => {
    fc.assert(
      fc.property(someContacts, fc.infiniteStream(fc.boolean()), (contacts, stream) => {
        const allowed = contacts.map(() => stream.next().value === true);
        const bits = allowed.reduce((mask, is, index) => (is ? mask | (1 << index) : mask), 0);
        const inputs = feasibleInputs(programOn(contacts), bits);
        const naive = naiveInputs(contacts, allowed);
        const readOf = (index: number): Read =>
          contacts.map((_, bit) => ((inputs.levels[index] ?? -1) >> bit) & 1);
        const everyIndex = inputs.levels.map((_, index) => index);
        expect(text(everyIndex.map(readOf))).toEqual(text(naive.everyRead));
        // A knob begins anywhere; the search begins with it at 0.
        const isAtZero = (read: Read) =>
          contacts.every(({ type }, index) => type !== 'turning' || read[index] === 0);
        expect(text(inputs.first.map(readOf))).toEqual(text(naive.first.filter(isAtZero)));
        for (const index of everyIndex)
          expect(text((inputs.next[index] ?? []).map(readOf))).toEqual(text(naive.next(readOf(index))));
      }),
      { numRuns: 300 },
    );
  });

  it('come calm ones first: fewest changes, and of as many those that let nothing go', () => {
    fc.assert(
      fc.property(someContacts, contacts => {
        const { levels, next } = feasibleInputs(programOn(contacts), 2 ** contacts.length - 1);
        const bitsIn = (value: number) => [...value.toString(2)].filter(digit => digit === '1').length;
        next.forEach((after, index) => {
          const before = levels[index] ?? 0;
          const ranks = after.map(to => {
            const value = levels[to] ?? 0;
            return [bitsIn(before ^ value), bitsIn(before & ~value) > 0 ? 1 : 0] as const;
          });
          expect(ranks).toEqual(ranks.toSorted(([a, c], [b, d]) => a - b || c - d));
        });
      }),
      { numRuns: 200 },
    );
  });

  const alike = (contacts: readonly ProgramContact[], holdBacks: Program['holdBacks'] = []) =>
    feasibleInputs({ ...programOn(contacts), holdBacks }, 2 ** contacts.length - 1).levels.toSorted(
      (a, b) => a - b,
    );

  it('engage contacts that nothing tells apart in their order only', () => {
    expect(alike([plain, plain, plain])).toEqual([0b000, 0b001, 0b011, 0b111]);
  });

  it('tell apart a contact that holds something back', () => {
    const holder = { kind: 'press', mask: 0b010, wanted: null } as const;
    expect(alike([plain, plain, plain], [{ target: 'x', holder, until: 0b111 }])).toEqual([
      0b000, 0b001, 0b010, 0b011, 0b101, 0b111,
    ]);
  });

  it('tell apart a contact that must be let go before a hold-back ends', () => {
    const holder = { kind: 'press', mask: 0b111, wanted: null } as const;
    expect(alike([plain, plain, plain], [{ target: 'x', holder, until: 0b001 }])).toEqual([
      0b000, 0b001, 0b010, 0b011, 0b110, 0b111,
    ]);
  });

  it('never put opposites, switches and knobs together with what is alike', () => {
    const [up, down]: readonly ProgramContact[] = [
      { ...plain, opposite: 1 },
      { ...plain, opposite: 0 },
    ];
    if (up === undefined || down === undefined) throw new Error('no contacts');
    expect(alike([up, down])).toEqual([0b00, 0b01, 0b10]);
    expect(
      alike([
        { ...plain, type: 'turning' },
        { ...plain, type: 'two-position' },
      ]),
    ).toEqual([0b00, 0b01, 0b10, 0b11]);
  });
});
