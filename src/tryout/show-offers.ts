import type { Speech } from '../documents/wording/gestures.js';
import type { Binding } from '../gestures/bindings.js';
import { type Play, type PlayState, type PlayStep, valuesIn } from '../gestures/play.js';
import { doHold } from '../gestures/values.js';
import type { BindingRow, Mode } from '../language/model.js';
import { partOf, setAway } from './dom.js';
import { createGameBlock, createOfferBlock, type Offer, type OfferBlock } from './offer.js';

/** A binding stays lit this long after it has fired, ms: what fires again and again does not flicker. */
const LIT = 350;

/** What can be done in the mode: a row for each action, lit while it fires, pale while its `When` does not hold. */
export function createOffers(play: Play, speech: Speech, happen: (row: BindingRow) => void) {
  let offers: readonly Offer[] = [];
  let mode: Mode | null = null;
  const litUntil = new Map<HTMLElement, number>();
  const fill = (next: Mode) => {
    const blocks = [
      ...rowsOf(play.engines.get(next)?.bindings ?? []).map(row => createOfferBlock(row, play, speech)),
      ...next.rows
        .filter(({ who }) => who.value.kind === 'game')
        .map(row => createGameBlock(row, play, speech, happen)),
    ] satisfies OfferBlock[];
    partOf('offers').replaceChildren(...blocks.map(({ target }) => target));
    offers = blocks.flatMap(block => block.offers);
    litUntil.clear();
    mode = next;
  };
  return {
    /**
     * @param time ms
     * @param isAway nothing can be done now: something is replayed
     */
    show(now: PlayState, time: number, isAway: boolean) {
      if (now.mode !== mode) fill(now.mode);
      const values = valuesIn(play, now);
      for (const { binding, target, conditions, isStuck } of offers) {
        const isOff = isStuck || !doHold(conditions, setting => values.get(setting));
        target.classList.toggle('off', isOff);
        if (binding === null) setAway(target, isOff || isAway);
      }
      for (const [target, until] of litUntil) {
        target.classList.toggle('on', time < until);
        if (time >= until) litUntil.delete(target);
      }
    },
    light({ fired }: PlayStep, time: number) {
      for (const { binding, target } of offers)
        if (binding !== null && fired.includes(binding)) litUntil.set(target, time + LIT);
    },
  };
}

/** The bindings of each row, in the order of the rows. */
function rowsOf(bindings: readonly Binding[]): readonly (readonly Binding[])[] {
  const orders = [...new Set(bindings.map(({ order }) => order))].toSorted((a, b) => a - b);
  return orders.map(order => bindings.filter(binding => binding.order === order));
}
