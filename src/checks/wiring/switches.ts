import type { Report } from '../../findings/report.js';
import { isTwoPosition, type SwitchName } from '../../hardware/switches.js';
import type { ControlName, Effect } from '../../language/model.js';
import type { CheckedRow } from '../checked-row.js';
import { detailsOf, gestureText, listText, unique } from '../text.js';

/** `hair-trigger-reset` and `unusual-switch`. */
export function checkSwitches(rows: readonly CheckedRow[], report: Report): void {
  for (const row of rows) {
    checkHairTrigger(row, report);
    checkCustom(row, report);
  }
}

const HAIR_TRIGGERS: readonly string[] = ['press', 'held', 'repeat'];

function checkHairTrigger(row: CheckedRow, report: Report): void {
  if (row.mode.kind !== 'play' || row.effects.length === 0) return;
  if (!HAIR_TRIGGERS.includes(row.gesture.value.kind)) return;
  const bare = row.alternatives.find(({ parts }) => parts.length === 1 && isSwitch(parts[0], 'RESET'));
  if (bare === undefined) return;
  report(
    'hair-trigger-reset',
    row.gesture.at,
    {
      mode: row.mode.name,
      action: row.actionName,
      gesture: gestureText(row.gesture.value),
      consequence: listText(unique(row.effects.map(effectText))),
    },
    { ...detailsOf(row), controls: ['RESET'] },
  );
}

function effectText(effect: Effect): string {
  return effect.kind === 'go to' ? `goes to ${effect.mode.name}` : `changes ${effect.setting.name}`;
}

type SwitchPart = Extract<ControlName, { kind: 'switch' }>;

function isSwitch(part: ControlName | undefined, name: SwitchName): boolean {
  return part?.kind === 'switch' && part.name === name;
}

/** One finding for each switch of a row. */
function checkCustom(row: CheckedRow, report: Report): void {
  const parts = row.alternatives
    .flatMap(chord => chord.parts)
    .filter((part): part is SwitchPart => part.kind === 'switch');
  for (const part of parts.filter(
    (one, index) => parts.findIndex(({ name }) => name === one.name) === index,
  )) {
    const custom = brokenCustom(part.name, row);
    if (custom === null) continue;
    report(
      'unusual-switch',
      part.at,
      { action: row.actionName, mode: row.mode.name, control: part.name, custom },
      { ...detailsOf(row), controls: [part.name] },
    );
  }
}

/** The custom that a row goes against; null where it keeps to it. */
function brokenCustom(name: SwitchName, { mode, effects }: CheckedRow): string | null {
  if (isTwoPosition(name)) return 'it sets something and does nothing by itself';
  if (name === 'RESET') {
    const leads = mode.kind === 'menu' || effects.some(({ kind }) => kind === 'go to');
    return leads ? null : 'it starts a game or starts again';
  }
  const steps = effects.some(
    effect => effect.kind === 'step' || (effect.kind === 'go to' && effect.mode.kind !== 'play'),
  );
  return mode.kind !== 'play' || steps ? null : 'it steps through the games or leads to a menu or a pause';
}
