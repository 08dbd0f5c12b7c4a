import { describe, expect, it } from 'vitest';
import { type GestureSpec, stateCount, stepGesture } from '../../src/gestures/automaton.js';

/** Whether it fires, read by read; `x` stands for a read at which the control is engaged. */
function fires(spec: GestureSpec, reads: string): string {
  let state = 0;
  return [...reads]
    .map(read => {
      const stepped = stepGesture(spec, state, read === 'x');
      state = stepped >> 1;
      return (stepped & 1) === 1 ? '!' : '.';
    })
    .join('');
}

function statesReached(spec: GestureSpec): readonly number[] {
  const reached = new Set([0]);
  for (const state of reached) for (const is of [true, false]) reached.add(stepGesture(spec, state, is) >> 1);
  return [...reached];
}

describe('a double tap', () => {
  const spec = { kind: 'double tap', reads: 6 } as const;

  it('does not begin with the second press of another', () => {
    expect(fires(spec, 'x.x.x.x.')).toBe('..!...!.');
    expect(fires(spec, 'x.xx.x..')).toBe('..!.....');
    expect(fires(spec, 'x.xx.x.x')).toBe('..!....!');
  });

  it('ends within its time, counted from press to press', () => {
    expect(fires(spec, 'x.....x')).toBe('......!');
    expect(fires(spec, 'x......x')).toBe('........');
    expect(fires(spec, 'xxxxx.x')).toBe('......!');
  });
});

describe('the states of a gesture', () => {
  const SPECS: readonly GestureSpec[] = [
    ...(['press', 'release', 'held', 'at', 'flip', 'flip to', 'turn'] as const).map(kind => ({
      kind,
      reads: 1,
    })),
    ...[1, 2, 7].flatMap(reads =>
      (['hold', 'tap', 'double tap', 'repeat'] as const).map(kind => ({ kind, reads })),
    ),
  ];

  it.each(SPECS)('of $kind with $reads reads are numbered from 0, and the last one is in use', spec => {
    expect(Math.max(...statesReached(spec))).toBe(stateCount(spec) - 1);
  });
});
