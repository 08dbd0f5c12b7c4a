import type { Element } from 'hast';
import { s } from 'hastscript';
import type { Verdict } from '../../checks/coverage-model.js';
import type { Finding } from '../../findings/finding.js';

/** Marks that differ in shape, so that print without colour (or eyes without it) loses nothing. */
const VERDICT_SHAPES: Readonly<Record<Verdict, readonly Element[]>> = {
  plays: [s('circle', { class: 'solid', cx: 10, cy: 10, r: 8 })],
  altered: [
    s('circle', { class: 'line', cx: 10, cy: 10, r: 7.5 }),
    s('path', { class: 'solid', d: 'M10 2.5 A7.5 7.5 0 0 1 10 17.5 Z' }),
  ],
  broken: [
    s('rect', { class: 'solid', x: 1, y: 1, width: 18, height: 18 }),
    s('path', { class: 'cut', d: 'M5.5 5.5 L14.5 14.5 M14.5 5.5 L5.5 14.5' }),
  ],
  'not offered': [s('path', { class: 'line', d: 'M5 10 H15' })],
};

const SEVERITY_SHAPES: Readonly<Record<Finding['severity'], readonly Element[]>> = {
  error: VERDICT_SHAPES.broken,
  warning: [
    s('path', { class: 'line', d: 'M10 2.5 L18.5 17.5 H1.5 Z' }),
    s('path', { class: 'line', d: 'M10 8 V12.4 M10 14 V15.6' }),
  ],
  note: [
    s('circle', { class: 'line', cx: 10, cy: 10, r: 7.5 }),
    s('path', { class: 'line', d: 'M10 9 V14.5 M10 5.4 V7' }),
  ],
  accepted: [s('path', { class: 'line', d: 'M3.5 10.5 L8 15 L16.5 5' })],
};

export function verdictShape(verdict: Verdict): Element {
  return shape(VERDICT_SHAPES[verdict]);
}

export function severityShape(severity: Finding['severity']): Element {
  return shape(SEVERITY_SHAPES[severity]);
}

/** Always stands beside its word, so it is hidden from those who have the page read out. */
function shape(parts: readonly Element[]): Element {
  return s(
    'svg',
    { class: 'shape', viewBox: '0 0 20 20', 'aria-hidden': 'true' },
    structuredClone([...parts]),
  );
}
