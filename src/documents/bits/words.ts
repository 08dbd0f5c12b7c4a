import { frameRate, type TvStandard, toNumber } from '../../hardware/clocks.js';
import { conditionText, effectText } from '../../language/as-written.js';
import type { Condition, Effect, Gesture, Scheme, Time } from '../../language/model.js';
import { readsOf } from '../../language/time.js';

/** A byte as assemblers write it: `$0A`. */
export function hexByte(value: number): string {
  return `$${value.toString(16).toUpperCase().padStart(2, '0')}`;
}

/** An address, always four digits: `$0280`. */
export function hexAddress(address: number): string {
  return `$${address.toString(16).toUpperCase().padStart(4, '0')}`;
}

/** `Chart is 1 and Tide is not strong`; empty where nothing is asked. */
export function conditionsText(conditions: readonly Condition[]): string {
  return conditions.map(conditionText).join(' and ');
}

/** `go to Harbour; Chart: next`. */
export function effectsText(effects: readonly Effect[]): string {
  return effects.map(effectText).join('; ');
}

/** As the scheme writes it: `tap under 0.5 s`, `flip to A`; a named time with what it stands for. */
export function gestureText(gesture: Gesture): string {
  switch (gesture.kind) {
    case 'hold':
      return `hold ${timeText(gesture.time)}`;
    case 'tap':
      return `tap under ${timeText(gesture.time)}`;
    case 'double tap':
      return `double tap within ${timeText(gesture.time)}`;
    case 'repeat':
      return `repeat every ${timeText(gesture.time)}`;
    case 'at':
    case 'flip to':
      return `${gesture.kind} ${gesture.position}`;
    default:
      return gesture.kind;
  }
}

function timeText({ text, name }: Time): string {
  return name === null ? text : `${name} (${text})`;
}

/** The reads a gesture's time takes on the scheme's standards: `NTSC: 30 reads, 501 ms`. */
export function gestureReads(gesture: Gesture, scheme: Scheme): readonly string[] {
  if (!('time' in gesture)) return [];
  return byStandard(scheme, standard => {
    const every = scheme.game.readEvery.value;
    const reads = readsOf(gesture.time, standard, every);
    const counted = gesture.kind === 'tap' ? reads - 1 : reads;
    const ms = millisecondsText(counted * readPeriodMs(standard, every));
    return `${AT_MOST.has(gesture.kind) ? `≤${FIRM_SPACE}` : ''}${counted}${FIRM_SPACE}${counted === 1 ? 'read' : 'reads'}, ${ms}`;
  });
}

/** A space at which no line is broken. */
const FIRM_SPACE = '\u00a0';

/** Gestures whose time is the longest that still counts. */
const AT_MOST: ReadonlySet<Gesture['kind']> = new Set(['tap', 'double tap']);

/** One line for each different text, the standards that share it named before it. */
export function byStandard(scheme: Scheme, write: (standard: TvStandard) => string): readonly string[] {
  const lines = new Map<string, string[]>();
  for (const standard of scheme.standards) {
    const text = write(standard);
    lines.set(text, [...(lines.get(text) ?? []), standard.name]);
  }
  return [...lines].map(([text, names]) => `${names.join(', ')}: ${text}`);
}

/** Milliseconds from one read to the next. */
export function readPeriodMs(standard: TvStandard, every: number): number {
  return (1000 * every) / toNumber(frameRate(standard));
}

/** `16.7 ms`, `501 ms`. */
export function millisecondsText(ms: number): string {
  return `${ms < 100 ? ms.toFixed(1) : ms.toFixed(0)}${FIRM_SPACE}ms`;
}

/** `every frame`, `every 2 frames`. */
export function readEveryText(every: number): string {
  return every === 1 ? 'every frame' : `every ${every} frames`;
}
