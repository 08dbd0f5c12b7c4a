import { describe, expect, it } from 'vitest';
import { narrow } from '../../src/cli/narrow.js';
import { compile } from '../../src/compile.js';
import type { Finding } from '../../src/findings/finding.js';
import { smallScheme } from './test-terminal.js';

const compiled = compile([{ path: 'game.md', text: smallScheme() }]);
const point = { line: 1, column: 1, offset: 0 };

function finding(details: Partial<Finding>): Finding {
  const at = { file: 'game.md', range: { start: point, end: point } };
  return { rule: 'lost-action', severity: 'error', message: '', at, waysOut: [], ...details };
}

const narrowed = (details: Partial<Finding>) =>
  narrow({ ...compiled, findings: [finding(details)] }, { console: 'four-switch' }).findings;

describe('a finding, asked for one console', () => {
  it('stays as it is where it names no console', () => {
    expect(narrowed({ seats: ['Solo'] })).toEqual([finding({ seats: ['Solo'] })]);
  });

  it('names that console only', () => {
    expect(narrowed({ consoles: ['six-switch', 'four-switch'] })[0]?.consoles).toEqual(['four-switch']);
  });

  it('is left out where it holds on others only', () => {
    expect(narrowed({ consoles: ['six-switch'] })).toEqual([]);
  });

  it('keeps of its seats rows and standards those in which it holds there', () => {
    const [first] = narrowed({
      consoles: ['six-switch', 'four-switch'],
      seats: ['Solo', 'Duet'],
      standards: ['NTSC', 'PAL'],
      where: [
        ['six-switch', 'Solo', 'NTSC'],
        ['four-switch', 'Duet', 'PAL'],
      ],
    });
    expect(first).toMatchObject({
      consoles: ['four-switch'],
      seats: ['Duet'],
      standards: ['PAL'],
      where: [['four-switch', 'Duet', 'PAL']],
    });
  });
});
