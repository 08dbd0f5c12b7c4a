import { choose, showChoice } from './choices.js';
import { isFromPowerOn } from './desk.js';
import { partOf } from './dom.js';
import type { Switchboard } from './findings.js';
import type { Table } from './table.js';
import { openTrace, saveTrace } from './trace-file.js';

interface Buttons extends Switchboard {
  readonly table: () => Table;
}

/** The lists at the head of the page and the buttons of the session. */
export function listenToButtons(board: Buttons): void {
  const { scheme, phrases, power, table, change, answers } = board;
  const powerOn = () => {
    answers.clear();
    change(power(choose(scheme)));
  };
  const wishes: Readonly<Record<string, () => void>> = {
    power: powerOn,
    step: () => table().clock.step(() => table().read()),
    replay() {
      const { play, reads, beginning } = table().desk;
      answers.clear();
      change(power(play, reads(), beginning));
    },
    save() {
      answers.clear();
      if (isFromPowerOn(table().desk)) saveTrace(table().desk);
      else answers.say('answer', { says: phrases.say('try not from power') });
    },
  };
  document.addEventListener('click', event => {
    const button = event.target instanceof Element ? event.target.closest('[data-do]') : null;
    wishes[button?.getAttribute('data-do') ?? '']?.();
  });
  partOf('choices').addEventListener('change', powerOn);
  giveBackKeys();
  listenToFile(board);
}

/**
 * After a choice, and after a press by a pointer, the keys play at once. Whoever came to a button with Tab keeps it:
 * a press by a key has no `detail` (W3C, UI Events, click).
 */
function giveBackKeys(): void {
  document.addEventListener('change', ({ target }) => {
    if (target instanceof HTMLSelectElement || target instanceof HTMLInputElement) target.blur();
  });
  document.addEventListener('click', ({ detail, target }) => {
    const button = target instanceof Element ? target.closest('button') : null;
    if (detail > 0) button?.blur();
  });
}

/** A trace that is opened is played again from power-on, on the console and with the seats that it names. */
function listenToFile({ scheme, phrases, power, change, answers }: Buttons): void {
  const input = document.querySelector<HTMLInputElement>('input[name="trace"]');
  input?.addEventListener('change', async () => {
    const text = await input.files?.[0]?.text().catch(() => null);
    input.value = '';
    if (typeof text !== 'string') return answers.say('answer', { says: phrases.say('try no file') });
    const opened = openTrace(scheme, text, phrases);
    if (!('play' in opened)) return answers.say('answer', opened);
    change(power(opened.play, opened.reads));
    showChoice(opened.play);
    answers.say('answer', opened);
  });
}
