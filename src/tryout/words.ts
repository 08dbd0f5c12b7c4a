import type { Binding } from '../gestures/bindings.js';
import type { Port } from '../hardware/ports.js';
import type { Gesture, SeatsRow } from '../language/model.js';

/** `press`, `hold 0.5 s`, `flip to A`. */
export function gestureWords(gesture: Gesture): string {
  if ('position' in gesture) return `${gesture.kind} ${gesture.position}`;
  return 'time' in gesture ? `${gesture.kind} ${gesture.time.text}` : gesture.kind;
}

export const controlWords = ({ parts }: Binding): string => parts.map(({ id }) => id).join(' + ');

/** `Steer left (right)`: the direction, and the player where it is not anyone. */
export function actionWords({ actionName, direction, player }: Binding): string {
  const way = direction === null ? '' : ` ${direction}`;
  return player === 'anyone' ? `${actionName}${way}` : `${actionName}${way} (${player})`;
}

export const portWords = (port: Port, seats: SeatsRow): string =>
  `${port === 'left' ? 'Left' : 'Right'} port: ${seats[port]?.name ?? 'empty'}`;

/** Which key has which code, where the code’s own name does not say it. */
const KEY_WORDS: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  Enter: 'Enter',
  Space: 'Space',
  Comma: ',',
  Period: '.',
};

/** What is printed on a key, as far as `layout` (by code) knows it; else on a US keyboard. */
export function keyWords(code: string, layout: ReadonlyMap<string, string>): string {
  const known = layout.get(code);
  if (known !== undefined) return known.toUpperCase();
  return KEY_WORDS[code] ?? code.replace(/^(Key|Digit)/, '');
}
