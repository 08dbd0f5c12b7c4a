import type { Action, BindingRow, Condition, Effect, Mode } from '../../language/model.js';
import { controlLabel, namedControls } from './controls.js';
import { type Speech, shortGesture } from './gestures.js';

/** The player's words for an action: its sentence, or its name where the scheme says nothing. */
export function actionWords(action: Action): string {
  return action.words === '' ? action.name : action.words;
}

export function effectSentence(effect: Effect, mode: Mode, { phrases }: Speech): string {
  switch (effect.kind) {
    case 'go to':
      return phrases.say(effect.mode === mode ? 'starts anew' : 'goes to', { mode: effect.mode.name });
    case 'set':
      return phrases.say('sets', { setting: effect.setting.name, value: effect.value });
    case 'step':
      return phrases.say(effect.by > 0 ? 'steps next' : 'steps previous', { setting: effect.setting.name });
    default:
      return effect satisfies never;
  }
}

export function conditionSentence(conditions: readonly Condition[], { phrases }: Speech): string | null {
  if (conditions.length === 0) return null;
  const said = conditions.map(({ is, setting, value }) =>
    phrases.say(is ? 'is' : 'is not', { setting: setting.name, value }),
  );
  return phrases.say('only while', { conditions: phrases.and(said) });
}

/** `While you do this, these wait: …`; null where nothing is held back. */
export function insteadSentence(row: BindingRow, { phrases }: Speech): string | null {
  if (row.insteadOf.length === 0) return null;
  const actions = row.insteadOf.map(({ value }) => phrases.say('quoted', { text: value.name }));
  return phrases.say('instead of', { actions: phrases.and(actions) });
}

/** In the order in which a hand does them: pressing before letting go. */
const ORDER = ['press', 'held', 'repeat', 'hold', 'double tap', 'tap', 'release'];

/** Intended overlaps: `These go together: press to charge, let go to throw.` */
export function togetherSentences(row: BindingRow, speech: Speech): readonly string[] {
  const { phrases } = speech;
  const partners = partnersOf(row);
  const here = [row, ...partners.filter(partner => partner.mode === row.mode)];
  const elsewhere = partners.filter(partner => partner.mode !== row.mode);
  const items = here
    .toSorted((a, b) => rankOf(a) - rankOf(b))
    .map(each =>
      phrases.say('together item', { how: shortHow(each, here, speech), Action: each.action.name }),
    );
  const said = here.length > 1 ? [phrases.say('together', { list: phrases.and(items) })] : [];
  return [
    ...said,
    ...elsewhere.map(each =>
      phrases.say('together elsewhere', { Action: each.action.name, mode: each.mode.name }),
    ),
  ];
}

const rankOf = (row: BindingRow) => ORDER.indexOf(row.gesture?.value.kind ?? '');

/** The gesture alone where all are on one control, else with the control before it. */
function shortHow(row: BindingRow, rows: readonly BindingRow[], speech: Speech): string {
  const how = row.gesture === null ? '' : shortGesture(row.gesture.value, speech);
  const controls = rows.map(each => controlsOf(each, speech));
  const own = controlsOf(row, speech);
  return controls.every(each => each === own) ? how : `${own}, ${how}`;
}

function controlsOf(row: BindingRow, { phrases }: Speech): string {
  const labels = row.alternatives.map(chord =>
    phrases.and(namedControls(chord).map(control => controlLabel(control, phrases))),
  );
  return phrases.or(labels);
}

/** The rows that this one is meant to happen with, whichever of the two says so; of the mode it leads to as well. */
function partnersOf(row: BindingRow): readonly BindingRow[] {
  const names = (from: BindingRow, to: BindingRow) => from.alongWith.some(({ value }) => value === to.action);
  const next = row.effects.flatMap(effect =>
    effect.kind === 'go to' && effect.mode !== row.mode ? [effect.mode] : [],
  );
  return [row.mode, ...next]
    .flatMap(({ rows }) => rows)
    .filter(other => other !== row && other.gesture !== null && (names(row, other) || names(other, row)))
    .filter(other => sharesControl(row, other));
}

function sharesControl(a: BindingRow, b: BindingRow): boolean {
  const names = (row: BindingRow) =>
    row.alternatives.flatMap(chord => namedControls(chord).map(({ name }) => name));
  const ofB = new Set(names(b));
  return names(a).some(name =>
    [...ofB].some(other => name === other || isPartOf(name, other) || isPartOf(other, name)),
  );
}

/** `stick up` is part of `stick` and of `stick up/down`. */
const isPartOf = (part: string, whole: string): boolean =>
  whole.startsWith('stick') &&
  part.startsWith('stick ') &&
  (whole === 'stick' || whole.includes(part.slice(6)));
