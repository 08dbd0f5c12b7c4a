import type { Phrases } from '../documents/phrase-book.js';
import type { Binding } from '../gestures/bindings.js';
import { type Play, type PlayState, type PlayStep, valuesIn } from '../gestures/play.js';
import { doHold } from '../gestures/values.js';
import { conditionText, effectText } from '../language/as-written.js';
import type { BindingRow, Condition, Mode } from '../language/model.js';
import { element, partOf } from './dom.js';
import { controlWords, gestureWords } from './words.js';

/** A binding stays lit this long after it has fired, ms: what fires again and again does not flicker. */
const LIT = 350;

interface Offer {
  readonly binding: Binding | null;
  readonly conditions: readonly Condition[];
  /** It moves a switch that this console fixes. */
  readonly isStuck: boolean;
  readonly target: HTMLElement;
}

/** What can be done in the mode: a row for each action, lit while it fires, pale while its `When` does not hold. */
export function createOffers({
  play,
  state,
  phrases,
  happen,
}: {
  play: Play;
  state: PlayState;
  phrases: Phrases;
  happen: (row: BindingRow) => void;
}) {
  let offers: readonly Offer[] = [];
  let mode: Mode | null = null;
  const litUntil = new Map<HTMLElement, number>();
  const show = (now: PlayState, time: number) => {
    if (now.mode !== mode) fill(now.mode);
    const values = valuesIn(play, now);
    for (const { target, conditions, isStuck } of offers)
      target.classList.toggle('off', isStuck || !doHold(conditions, setting => values.get(setting)));
    for (const [target, until] of litUntil) {
      if (time < until) continue;
      target.classList.remove('on');
      litUntil.delete(target);
    }
  };
  const light = ({ fired }: PlayStep, time: number) => {
    for (const { binding, target } of offers) {
      if (binding === null || !fired.includes(binding)) continue;
      target.classList.add('on');
      litUntil.set(target, time + LIT);
    }
  };
  show(state, 0);
  return { show, light };

  function fill(next: Mode): void {
    mode = next;
    litUntil.clear();
    const bindings = play.engines.get(next)?.bindings ?? [];
    const orders = [...new Set(bindings.map(({ order }) => order))].toSorted((a, b) => a - b);
    const made = orders.map(order =>
      actionRow(
        bindings.filter(binding => binding.order === order),
        play,
        phrases,
      ),
    );
    const game = next.rows.filter(({ who }) => who.value.kind === 'game').map(gameRow);
    offers = [...made, ...game].flatMap(row => row.offers);
    partOf('offers').replaceChildren(...[...made, ...game].map(row => row.block));
  }

  function gameRow(row: BindingRow) {
    const target = element('button', { type: 'button', class: 'way' }, phrases.say('try happen'));
    target.addEventListener('click', () => happen(row));
    const offer: Offer = { binding: null, conditions: row.conditions, isStuck: false, target };
    const words = [row.action.name, row.action.words, tailOf(row.conditions, row.effects, phrases)] as const;
    const way = element(
      'p',
      { class: 'ways' },
      element('span', { class: 'who' }, phrases.say('the game')),
      target,
    );
    return { block: blockOf(play.scheme.game.language.value, ...words, [way]), offers: [offer] };
  }
}

function actionRow(bindings: readonly Binding[], play: Play, phrases: Phrases) {
  const [first] = bindings;
  const offers = bindings.map((binding): Offer => {
    const target = element(
      'span',
      { class: 'way' },
      controlWords(binding),
      ' ',
      element('i', {}, gestureWords(binding.gesture)),
    );
    return { binding, conditions: binding.conditions, isStuck: isStuck(binding, play), target };
  });
  const players = [...new Set(bindings.map(({ player }) => player))];
  const ways = players.map(player => {
    const own = offers.flatMap(({ binding, target }) => (binding?.player === player ? [target] : []));
    return element(
      'p',
      { class: 'ways' },
      element('span', { class: 'who' }, phrases.say(player === 'anyone' ? 'anyone' : `player ${player}`)),
      ...own,
    );
  });
  const tail = first === undefined ? '' : tailOf(first.conditions, first.effects, phrases);
  return {
    block: blockOf(
      play.scheme.game.language.value,
      first?.actionName ?? '',
      first?.action?.words ?? '',
      tail,
      ways,
    ),
    offers,
  };
}

/** ` when Chart is 3 · go to Quay`. */
function tailOf(conditions: readonly Condition[], effects: BindingRow['effects'], { say }: Phrases): string {
  const when =
    conditions.length === 0
      ? []
      : [say('try when', { conditions: conditions.map(conditionText).join(', ') })];
  return [...when, ...effects.map(effectText)].join(' · ');
}

/** @param lang of the scheme’s own words */
function blockOf(
  lang: string,
  name: string,
  words: string,
  tail: string,
  ways: readonly HTMLElement[],
): HTMLElement {
  return element(
    'div',
    { class: 'offer' },
    element(
      'p',
      {},
      element('strong', { lang }, name),
      ...(tail === '' ? [] : [' ', element('small', {}, tail)]),
    ),
    ...(words === '' ? [] : [element('p', { class: 'words', lang }, words)]),
    ...ways,
  );
}

function isStuck({ gesture, parts }: Binding, { profile }: Play): boolean {
  if (gesture.kind !== 'flip' && gesture.kind !== 'flip to') return false;
  return parts.some(part => part.kind === 'switch' && profile.switches[part.name].kind === 'fixed');
}
