import { describe, expect, it } from 'vitest';
import { compile } from '../../src/compile.js';
import { findingsOf, listCases } from '../support/cases.js';
import { smallText } from '../support/small-scheme.js';

const stepsOf = (text: string) =>
  compile([{ path: 'scheme.md', text }])
    .findings.filter(({ rule }) => rule === 'carry-over')
    .map(({ witness }) => witness?.steps.map(({ engaged, fires }) => [engaged, fires]));

describe('the presses that show a carry-over', () => {
  it.each(listCases().filter(({ rule }) => rule === 'carry-over'))(
    'engage nothing at the first read of the new mode: $name',
    of => {
      const found = findingsOf(of).filter(({ rule }) => rule === 'carry-over');
      for (const { witness } of found) {
        const [before, entry] = witness?.steps.slice(-2) ?? [];
        expect(before?.engaged).toEqual(expect.arrayContaining([...(entry?.engaged ?? ['none'])]));
      }
    },
  );

  const LEAVE = {
    mode: 'Garden',
    action: 'Leave',
    control: 'stick down',
    gesture: 'press',
    does: 'go to Yard',
  };
  const enter = (action: string, control: string) => ({
    action,
    control,
    gesture: 'press',
    does: 'go to Garden',
  });
  const water = (control: string) => ({ mode: 'Garden', action: 'Water', control, gesture: 'held' });

  it('name a control that only the new mode uses from the read at which it is engaged', () => {
    expect(stepsOf(smallText([enter('Enter', 'button'), water('stick up + button'), LEAVE]))).toEqual([
      [
        [['left stick up'], []],
        [['left button', 'left stick up'], ['Enter']],
        [['left button', 'left stick up'], ['Water']],
      ],
    ]);
  });

  it('do not leave the old mode on the way, where there is such a way', () => {
    const rows = [enter('Enter', 'button + stick up'), enter('Jump in', 'stick up'), water('button'), LEAVE];
    const [entered] = stepsOf(smallText(rows));
    expect(entered?.map(([, fires]) => fires)).toEqual([[], ['Enter', 'Jump in'], ['Water']]);
  });
});
