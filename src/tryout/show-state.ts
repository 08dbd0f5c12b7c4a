import type { Phrases } from '../documents/phrase-book.js';
import { switchWords } from '../documents/wording/machine.js';
import { type Play, type PlayState, valuesIn } from '../gestures/play.js';
import type { Setting } from '../language/model.js';
import { element, partOf, setText } from './dom.js';

/** The mode and the value of every setting, as the next read will find them. */
export function createStateView(play: Play, phrases: Phrases) {
  const values = new Map<Setting, HTMLElement>();
  const lang = play.scheme.game.language.value;
  const entries = play.scheme.settings.map(setting => {
    const value = element('span', { lang });
    values.set(setting, value);
    const said = element('dd', {}, value, element('small', {}, sourceOf(play, setting, phrases)));
    return element('div', {}, element('dt', { lang }, setting.name), said);
  });
  partOf('settings').replaceChildren(...entries);
  return {
    show(now: PlayState) {
      setText(partOf('mode'), now.mode.name);
      setText(partOf('mode-kind'), phrases.say(`mode kind ${now.mode.kind}`));
      for (const [setting, value] of valuesIn(play, now)) {
        const target = values.get(setting);
        if (target !== undefined) setText(target, value);
      }
    },
  };
}

/** Where a setting's value comes from on this console. */
function sourceOf({ sources }: Play, setting: Setting, phrases: Phrases): string {
  const source = sources.get(setting);
  if (source?.kind === 'switch') return switchWords(source.name, phrases);
  return source?.kind === 'constant' ? phrases.say('try constant') : phrases.say('try kept');
}
