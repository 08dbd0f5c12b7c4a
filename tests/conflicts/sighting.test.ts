import { describe, expect, it } from 'vitest';
import { cellsOf, timeCell } from '../../src/checks/conflicts/cells.js';
import { groupSightings, sightingIn } from '../../src/checks/conflicts/sighting.js';
import { checkConflicts } from '../../src/checks/conflicts.js';
import type { Finding } from '../../src/findings/finding.js';
import { createReport } from '../../src/findings/report.js';
import { type SmallOptions, type SmallRow, smallScheme } from '../support/small-scheme.js';

/** The carry-overs of these rows: where and between what. */
function carryOvers(
  rows: readonly SmallRow[],
  options: SmallOptions,
): readonly Pick<Finding, 'actions' | 'seats' | 'standards' | 'consoles'>[] {
  const { report, findings } = createReport();
  checkConflicts(smallScheme(rows, options), report);
  return findings
    .filter(({ rule }) => rule === 'carry-over')
    .map(({ actions, seats, standards, consoles }) => ({
      ...(actions === undefined ? {} : { actions }),
      ...(seats === undefined ? {} : { seats }),
      ...(standards === undefined ? {} : { standards }),
      ...(consoles === undefined ? {} : { consoles }),
    }));
}

const ENTER: SmallRow = {
  mode: 'Gate',
  action: 'Enter',
  control: 'button',
  gesture: 'press',
  does: 'go to Yard',
};
const WATER: SmallRow = { mode: 'Yard', action: 'Water', control: 'button', gesture: 'held' };
const TWO_SEATS = ['Solo | 1 | joystick | empty', 'Duet | 2 | joystick | joystick'];

describe('a control that is still engaged in the mode that it leads into', () => {
  it('may be a part of a chord', () => {
    const rows = [{ ...ENTER, control: 'stick up + button' }, WATER];
    expect(carryOvers(rows, {})).toEqual([
      { actions: ['Enter', 'Water'], seats: ['Solo'], standards: ['NTSC'] },
    ]);
    expect(carryOvers([{ ...ENTER, control: 'stick up + stick left' }, WATER], {})).toEqual([]);
  });

  it('counts in the same seats row only', () => {
    const rows = [
      { ...ENTER, who: 'left' },
      { ...WATER, who: 'right', control: 'left button' },
    ];
    expect(carryOvers(rows, { seats: TWO_SEATS })).toEqual([
      { actions: ['Enter', 'Water'], seats: ['Duet'], standards: ['NTSC'] },
    ]);
  });

  it('counts on the standards on which the way in is possible', () => {
    const rows = [{ ...ENTER, gesture: 'hold 5 s' }, WATER];
    expect(carryOvers(rows, { game: { 'TV standards': 'NTSC, PAL' } })).toEqual([
      { actions: ['Enter', 'Water'], seats: ['Solo'], standards: ['PAL'] },
    ]);
  });

  it('counts where both modes are played, alike or not on the consoles', () => {
    const game = { Consoles: 'six-switch, no-difficulty' };
    const night: SmallRow = {
      who: 'anyone',
      action: 'Night',
      control: 'left difficulty',
      gesture: 'flip to A',
    };
    for (const mode of ['Gate', 'Yard'])
      expect(carryOvers([ENTER, WATER, { ...night, mode }], { game })).toEqual([
        { actions: ['Enter', 'Water'], seats: ['Solo'], standards: ['NTSC'] },
      ]);
  });

  it('counts on the consoles on which both are there', () => {
    const game = { Consoles: 'six-switch, no-difficulty' };
    const extra =
      '## Fallbacks\n\n| Without | For | Instead |\n| --- | --- | --- |\n| left difficulty | Night | Yard: left stick up held |\n';
    const night: SmallRow = {
      mode: 'Yard',
      who: 'anyone',
      action: 'Night',
      control: 'left difficulty',
      gesture: 'flip to A',
    };
    const rows = [{ ...ENTER, control: 'stick up' }, night];
    expect(carryOvers(rows, { game, extra })).toEqual([
      { actions: ['Enter', 'Night'], seats: ['Solo'], standards: ['NTSC'], consoles: ['no-difficulty'] },
    ]);
  });
});

describe('sightings of one rule on the same rows', () => {
  /** Rows are numbered as they come up: 1 and 112 are not 11 and 12. */
  it('are put together, and no others, however many rows there are', () => {
    const rows = Array.from({ length: 113 }, (_, index) => ({
      action: `Hop ${index}`,
      control: 'button',
      gesture: 'press',
    }));
    const scheme = smallScheme(rows);
    const [cell] = scheme.modes.flatMap(mode => cellsOf(scheme, mode));
    const [standard] = scheme.standards;
    if (cell === undefined || standard === undefined) throw new Error('no cell');
    const sight = (x: number, y: number) => {
      const [one, other] = [cell.bindings[x], cell.bindings[y]];
      if (one === undefined || other === undefined) throw new Error('no binding');
      return sightingIn(timeCell(cell, standard), 'same-moment', [one, other]);
    };
    const numbering = rows.map((_, index) => sight(index, index));
    const [one, other, again] = [sight(1, 112), sight(11, 12), sight(112, 1)];
    const groups = groupSightings([...numbering, one, other, again]);
    expect(groups.slice(rows.length)).toEqual([[one, again], [other]]);
  });
});
