import type { Speech } from '../documents/wording/gestures.js';
import type { PlayStep } from '../gestures/play.js';
import type { Effect, Mode } from '../language/model.js';
import { element, partOf, setText } from './dom.js';
import { actionWords, controlWords, gestureWords, tailWords } from './words.js';

const MOST_LINES = 200;

interface Line {
  readonly target: HTMLElement;
  readonly count: HTMLElement;
  /** The last read at which it fired. */
  read: number;
  times: number;
}

/** What fires, the latest first; what fires at several reads in a row is one line. */
export function createFires(speech: Speech) {
  const { phrases } = speech;
  const list = partOf('fires');
  const last = partOf('last');
  list.replaceChildren();
  last.replaceChildren();
  let open = new Map<string, Line>();
  const write = (key: string, words: readonly (Node | string)[], read: number) => {
    const known = open.get(key);
    if (known !== undefined && known.read === read - 1) {
      known.read = read;
      known.times++;
      known.count.textContent = `, ${phrases.say('try in a row', { number: known.times })}`;
      return known;
    }
    const count = element('small');
    const target = element(
      'li',
      {},
      element('small', { class: 'read' }, phrases.say('try read', { number: read })),
      ' ',
      ...words,
      count,
    );
    list.prepend(target);
    while (list.childElementCount > MOST_LINES) list.lastElementChild?.remove();
    return { target, count, read, times: 1 };
  };
  const add = ({ fired, game, mode, state }: PlayStep) => {
    const read = state.read - 1;
    const lines = [
      ...game.map(({ action, effects }): [string, string, string] => [
        action.name,
        phrases.say('the game'),
        tailOf(mode, effects, speech),
      ]),
      ...fired.map((binding): [string, string, string] => [
        actionWords(binding, phrases),
        `${controlWords(binding, phrases)}, ${gestureWords(binding.gesture, speech)}`,
        tailOf(mode, binding.effects, speech),
      ]),
    ];
    const next = new Map<string, Line>();
    for (const [name, how, tail] of lines) {
      const key = JSON.stringify([name, how]);
      next.set(key, write(key, [element('strong', {}, name), ` ${how}`, tail], read));
    }
    if (state.mode !== mode) write('', ['→ ', element('b', {}, state.mode.name)], read);
    open = next;
    setText(last, list.firstElementChild?.textContent ?? '');
  };
  return { add };
}

/** What it does besides; where it leads is a line of its own, once the mode has changed. */
function tailOf(mode: Mode, effects: readonly Effect[], speech: Speech): string {
  const told = effects.filter(effect => effect.kind !== 'go to' || effect.mode === mode);
  return told.length === 0 ? '' : ` → ${tailWords(mode, [], told, speech)}`;
}
