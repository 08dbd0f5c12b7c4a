import type { Phrases } from '../documents/phrase-book.js';
import type { Binding } from '../gestures/bindings.js';
import type { Play } from '../gestures/play.js';
import { conditionText, effectText } from '../language/as-written.js';
import type { BindingRow, Condition, Effect } from '../language/model.js';
import { element } from './dom.js';
import { controlWords, gestureWords } from './words.js';

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
export function createOfferBlock(bindings: readonly Binding[], play: Play, phrases: Phrases): OfferBlock {
  const offers = bindings.map((binding): Offer => {
    const gesture = element('i', {}, gestureWords(binding.gesture));
    const target = element('span', { class: 'way' }, controlWords(binding), ' ', gesture);
    return { binding, conditions: binding.conditions, isStuck: isStuck(binding, play), target };
  });
  const players = [...new Set(bindings.map(({ player }) => player))];
  const ways = players.map(player => {
    const own = offers.flatMap(({ binding, target }) => (binding?.player === player ? [target] : []));
    return waysOf(phrases.say(player === 'anyone' ? 'anyone' : `player ${player}`), own);
  });
  const [first] = bindings;
  const words = { name: first?.actionName ?? '', says: first?.action?.words ?? '' };
  const tail = tailOf(first?.conditions ?? [], first?.effects ?? [], phrases);
  return { target: blockOf(play, { ...words, tail }, ways), offers };
}

/** A `game` row: a button lets it happen. */
export function createGameBlock(
  row: BindingRow,
  play: Play,
  phrases: Phrases,
  happen: (row: BindingRow) => void,
): OfferBlock {
  const { action, conditions, effects } = row;
  const target = element('button', { type: 'button', class: 'way' }, phrases.say('try happen'));
  target.addEventListener('click', () => happen(row));
  const words = { name: action.name, says: action.words, tail: tailOf(conditions, effects, phrases) };
  return {
    target: blockOf(play, words, [waysOf(phrases.say('the game'), [target])]),
    offers: [{ binding: null, conditions, isStuck: false, target }],
  };
}

const waysOf = (who: string, ways: readonly HTMLElement[]): HTMLElement =>
  element('p', { class: 'ways' }, element('span', { class: 'who' }, who), ...ways);

/** `when Chart is 3 · go to Quay`. */
function tailOf(conditions: readonly Condition[], effects: readonly Effect[], { say }: Phrases): string {
  const asked = conditions.map(conditionText).join(', ');
  const when = asked === '' ? [] : [say('try when', { conditions: asked })];
  return [...when, ...effects.map(effectText)].join(' · ');
}

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
