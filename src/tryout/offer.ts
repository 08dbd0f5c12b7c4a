import { bindingName } from '../documents/wording/bindings.js';
import type { Speech } from '../documents/wording/gestures.js';
import type { Binding } from '../gestures/bindings.js';
import type { Play } from '../gestures/play.js';
import type { BindingRow, Condition } from '../language/model.js';
import { element } from './dom.js';
import { controlWords, gestureWords, tailWords } from './words.js';

/** One way of doing an action. */
export interface Offer {
  /** Null for what the game does by itself. */
  readonly binding: Binding | null;
  readonly conditions: readonly Condition[];
  /** It moves a switch that this console fixes. */
  readonly isStuck: boolean;
  readonly target: HTMLElement;
}

/** A row of a mode’s table with the ways of doing it. */
export interface OfferBlock {
  readonly target: HTMLElement;
  readonly offers: readonly Offer[];
}

/** @param bindings of one row, at least one */
export function createOfferBlock(bindings: readonly Binding[], play: Play, speech: Speech): OfferBlock {
  const { phrases } = speech;
  const offers = bindings.map((binding): Offer => {
    const gesture = element('i', {}, gestureWords(binding.gesture, speech));
    const target = element('span', { class: 'way' }, controlWords(binding, phrases), ' ', gesture);
    return { binding, conditions: binding.conditions, isStuck: isStuck(binding, play), target };
  });
  const players = [...new Set(bindings.map(({ player }) => player))];
  const ways = players.map(player => {
    const own = offers.flatMap(({ binding, target }) => (binding?.player === player ? [target] : []));
    return waysOf(phrases.say(player === 'anyone' ? 'anyone' : `player ${player}`), own);
  });
  const [first] = bindings;
  const name = first === undefined ? '' : bindingName(first, phrases);
  const words = { name, says: first?.action?.words ?? '' };
  const tail = first === undefined ? '' : tailWords(first.mode, first.conditions, first.effects, speech);
  return { target: blockOf(play, { ...words, tail }, ways), offers };
}

/** A `game` row: a button lets it happen. */
export function createGameBlock(
  row: BindingRow,
  play: Play,
  speech: Speech,
  happen: (row: BindingRow) => void,
): OfferBlock {
  const { phrases } = speech;
  const { action, conditions, effects, mode } = row;
  const target = element('button', { type: 'button', class: 'way' }, phrases.say('try happen'));
  target.addEventListener('click', () => {
    if (target.getAttribute('aria-disabled') !== 'true') happen(row);
  });
  const words = { name: action.name, says: action.words, tail: tailWords(mode, conditions, effects, speech) };
  return {
    target: blockOf(play, words, [waysOf(phrases.say('the game'), [target])]),
    offers: [{ binding: null, conditions, isStuck: false, target }],
  };
}

const waysOf = (who: string, ways: readonly HTMLElement[]): HTMLElement =>
  element('p', { class: 'ways' }, element('span', { class: 'who' }, who), ...ways);

interface BlockWords {
  readonly name: string;
  /** What the player reads. */
  readonly says: string;
  readonly tail: string;
}

function blockOf(
  { scheme }: Play,
  { name, says, tail }: BlockWords,
  ways: readonly HTMLElement[],
): HTMLElement {
  const lang = scheme.game.language.value;
  const more = tail === '' ? [] : [' ', element('small', {}, tail)];
  return element(
    'div',
    { class: 'offer' },
    element('p', {}, element('strong', { lang }, name), ...more),
    ...(says === '' ? [] : [element('p', { class: 'words', lang }, says)]),
    ...ways,
  );
}

function isStuck({ gesture, parts }: Binding, { profile }: Play): boolean {
  if (gesture.kind !== 'flip' && gesture.kind !== 'flip to') return false;
  return parts.some(part => part.kind === 'switch' && profile.switches[part.name].kind === 'fixed');
}
