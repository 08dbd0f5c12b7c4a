import { begins, FORMS, type Form, WRITTEN, written } from './gesture-forms.js';
import type { NamedTime } from './model.js';
import type { Names } from './names.js';
import { findPosition } from './positions.js';
import { LONGEST_LOOKED_THROUGH, nearest, normal, tidy } from './spelling.js';
import { timeIn } from './times.js';

/** A time or a position that stands at the end of a gesture. */
interface Slot {
  /** The words before it. */
  readonly lead: string;
  readonly said: string;
  readonly takes: 'T' | 'P';
}

/** The gesture that words of daily use mean; null where none is sure. What they say of a time is never lost. */
export function meantGesture(written: string, times: Names<NamedTime>): string | null {
  const text = tidy(written);
  if (text.length > LONGEST_LOOKED_THROUGH) return null;
  const slot = slotOf(text, times);
  if (slot === null) return bareGesture(text);
  const form = nearForm(
    slot.lead,
    FORMS.filter(({ takes }) => takes === slot.takes),
    [...WITH_A_TIME, ...DAILY_WORDS],
  );
  return form === null ? null : `${form.words} ${slot.said}`;
}

function bareGesture(text: string): string | null {
  const form = nearForm(text, FORMS, DAILY_WORDS);
  if (form === null) return nearest(text, WRITTEN);
  return form.takes === 'nothing' && /\d/.test(text) ? null : written(form);
}

function slotOf(text: string, times: Names<NamedTime>): Slot | null {
  const words = text.split(' ');
  for (const index of words.keys()) {
    const said = index === 0 ? null : timeIn(words.slice(index).join(' '), times);
    if (said !== null) return { lead: words.slice(0, index).join(' '), said, takes: 'T' };
  }
  const position = findPosition(words.at(-1) ?? '');
  if (position === undefined || words.length < 2) return null;
  return { lead: words.slice(0, -1).join(' '), said: position, takes: 'P' };
}

function nearForm(text: string, forms: readonly Form[], others: readonly DailyWord[]): Form | null {
  const lead = normal(text).replace(/ (?:for|of|about|at least)$/, '');
  const daily = others.find(([pattern]) => pattern.test(lead))?.[1];
  const near = nearest(
    lead,
    forms.map(({ words }) => words),
  );
  const first = lead.replace(/ .*/, '');
  const begun = nearest(
    first,
    forms.map(({ words }) => words.replace(/ .*/, '')),
  );
  return (
    forms.find(({ words }) => words === daily) ??
    forms.find(({ words }) => words === near) ??
    forms.find(({ words }) => begins(words, first)) ??
    forms.find(({ words }) => begun !== null && begins(words, begun)) ??
    null
  );
}

type DailyWord = readonly [pattern: RegExp, words: Form['words']];

const DAILY_WORDS: readonly DailyWord[] = [
  [/^(?:press(?:ed)? )?(?:and |& )(?:hold|held)(?: down)?$/, 'hold'],
  [/^(?:double|two)[- ]?(?:tap|press|click)(?:e?s)?(?: (?:within|in))?$/, 'double tap within'],
  [
    /^(?:tap|press|click)(?:p?ed|e?s)? (?:twice|two times|2 times|2x)(?: (?:within|in))?$/,
    'double tap within',
  ],
  [/^(?:(?:tap|press) )?every$/, 'repeat every'],
  [/^flip$/, 'flip to'],
  [/^turn(?:s|ed|ing)$/, 'turn'],
  [/^(?:pressed|click(?:ed)?|push(?:ed)?)$/, 'press'],
];

/** What is held for a time. */
const WITH_A_TIME: readonly DailyWord[] = [
  [/^(?:press(?:ed)?|push(?:ed)?|held|holding|(?:hold|held) down)$/, 'hold'],
];
