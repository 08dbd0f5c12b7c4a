import type { Report } from '../findings/report.js';
import type { Action, Scheme, Setting } from '../language/model.js';
import { checkShorts, type KeyFit } from './words/shorts.js';
import { checkSymbols } from './words/symbols.js';

/**
 * The rules on what is said and how it is called.
 *
 * @param keyFit whether a short label fits its printed key; left out, that part of `short-too-long` is not looked at
 */
export function checkWords(scheme: Scheme, report: Report, keyFit?: KeyFit): void {
  checkActions(scheme, report);
  checkSettings(scheme, report);
  checkShorts(scheme, report, keyFit);
  checkSymbols(scheme, report);
}

/** `no-words` and `unused-action`. What the game does by itself counts as bound. */
function checkActions(scheme: Scheme, report: Report): void {
  const bound = new Set<Action>(scheme.modes.flatMap(({ rows }) => rows.map(({ action }) => action)));
  for (const action of scheme.actions) {
    const details = { actions: [action.name] };
    if (!bound.has(action)) report('unused-action', action.at, { action: action.name }, details);
    else if (action.words === '') report('no-words', action.at, { action: action.name }, details);
  }
}

/** `unused-setting`. */
function checkSettings(scheme: Scheme, report: Report): void {
  const named = namedSettings(scheme);
  for (const setting of scheme.settings) {
    if (setting.setBy.kind !== 'game' || named.has(setting)) continue;
    report('unused-setting', setting.at, { setting: setting.name }, { settings: [setting.name] });
  }
}

function namedSettings({ modes, variations, fallbacks }: Scheme): ReadonlySet<Setting> {
  const named = new Set<Setting>();
  for (const row of modes.flatMap(({ rows }) => rows)) {
    for (const { setting } of row.conditions) named.add(setting);
    for (const effect of row.effects) if (effect.kind !== 'go to') named.add(effect.setting);
  }
  for (const { values } of variations) for (const setting of values.keys()) named.add(setting);
  for (const { subject } of fallbacks) if (subject.kind === 'setting') named.add(subject.setting);
  return named;
}
