import type { Phrases } from '../documents/phrase-book.js';
import { PHRASES, type PhraseKey } from '../documents/phrase-keys.js';
import type { Binding } from '../gestures/bindings.js';
import type { Controller } from '../hardware/controllers.js';
import type { Port } from '../hardware/ports.js';
import type { Gesture, SeatsRow } from '../language/model.js';

/** `press`, `hold 0.5 s`, `flip to A`. */
export function gestureWords(gesture: Gesture): string {
  if ('position' in gesture) return `${gesture.kind} ${gesture.position}`;
  return 'time' in gesture ? `${gesture.kind} ${gesture.time.text}` : gesture.kind;
}

export const controlWords = ({ parts }: Binding): string => parts.map(({ id }) => id).join(' + ');

/** `Steer left (Right player)`: the direction, and the player where it is not anyone. */
export function actionWords({ actionName, direction, player }: Binding, { say }: Phrases): string {
  const way = direction === null ? '' : ` ${direction}`;
  return player === 'anyone' ? `${actionName}${way}` : `${actionName}${way} (${say(`player ${player}`)})`;
}

/** `Left port: joystick`. */
export function portWords(port: Port, seats: SeatsRow, { say }: Phrases): string {
  const controller = seats[port];
  return say('try port', {
    port: say(`port ${port}`),
    controller: controller === null ? say('port empty') : controllerName(controller, say),
  });
}

function controllerName({ name, own }: Controller, say: Phrases['say']): string {
  const key = `controller ${name}`;
  return !own && isPhraseKey(key) ? (say as (key: PhraseKey) => string)(key) : name;
}

const isPhraseKey = (key: string): key is PhraseKey => Object.hasOwn(PHRASES, key);

/** Which key has which code, where the code’s own name does not say it. */
const KEY_WORDS: Readonly<Record<string, string>> = {
  ArrowUp: '↑',
  ArrowDown: '↓',
  ArrowLeft: '←',
  ArrowRight: '→',
  Comma: ',',
  Period: '.',
};

/** What is printed on a key, as far as `layout` (by code) knows it; else on a US keyboard. */
export function keyWords(code: string, layout: ReadonlyMap<string, string>, { say }: Phrases): string {
  if (code === 'Space') return say('try key space');
  if (code === 'Enter') return say('try key enter');
  const known = layout.get(code);
  if (known !== undefined) return known.toUpperCase();
  return KEY_WORDS[code] ?? code.replace(/^(Key|Digit)/, '');
}
