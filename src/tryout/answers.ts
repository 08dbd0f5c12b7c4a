import type { Desk } from './desk.js';
import { element, partOf } from './dom.js';

/** Where the page answers: at its head, at the buttons of the session, at the findings. */
type Place = 'message' | 'answer' | 'unshown';

export interface Answer {
  /** In the language of the page. */
  readonly says: string;
  /** What is only known in English, as `leverleaf trace` and the findings say it; none where it is left out. */
  readonly english?: string | undefined;
}

/** What the page says to a press of its buttons, until play goes on. */
export interface Answers {
  say(place: Place, answer: Answer): void;
  clear(): void;
  /** Takes back what was said once the player does something; a replay is none. */
  follow(desk: Desk): void;
}

export function createAnswers(): Answers {
  /** What was engaged when it was said; null for nothing said, or not yet seen. */
  let then: { readonly desk: Desk; readonly levels: readonly number[] } | null = null;
  let target: HTMLElement | null = null;
  const clear = () => {
    target?.replaceChildren();
    target = null;
    then = null;
  };
  return {
    clear,
    say(place, { says, english }) {
      clear();
      const foreign =
        english === undefined ? [] : [element('span', { class: 'english', lang: 'en' }, english)];
      target = partOf(place);
      target.append(element('span', {}, says), ...foreign);
    },
    follow(desk) {
      if (target === null || desk.isReplaying()) return;
      const { levels } = desk.state();
      if (then?.desk !== desk) then = { desk, levels };
      else if (then.levels.some((level, index) => level !== levels[index])) clear();
    },
  };
}
