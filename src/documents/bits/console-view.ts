import { settingSource } from '../../gestures/settings.js';
import type { ConsoleProfile, SwitchState } from '../../hardware/consoles.js';
import { type PanelSwitch, SWITCH_NAMES, SWITCHES } from '../../hardware/switches.js';
import type { Scheme, Setting } from '../../language/model.js';
import { hexByte } from './words.js';

/** What each console's switch lines read. */
export interface ConsoleTable {
  readonly consoles: readonly string[];
  readonly rows: readonly SwitchLine[];
}

export interface SwitchLine {
  readonly name: string;
  /** `D6`. */
  readonly bit: string;
  readonly mask: string;
  /** `0 = B, 1 = A`. */
  readonly reads: string;
  /** One for each console: `front`, `rear`, `fixed: always 0 (B)`. */
  readonly cells: readonly string[];
}

export function viewConsoles({ consoles }: Scheme): ConsoleTable {
  return {
    consoles: consoles.map(({ name }) => name),
    rows: SWITCH_NAMES.map(name => {
      const panelSwitch = SWITCHES[name];
      return {
        name,
        bit: `D${panelSwitch.bit}`,
        mask: hexByte(1 << panelSwitch.bit),
        reads: readsText(panelSwitch),
        cells: consoles.map(profile => stateText(profile.switches[name], panelSwitch)),
      };
    }),
  };
}

function readsText({ positions }: PanelSwitch): string {
  if (positions.length === 0) return '0 = pressed, 1 = not pressed';
  return [...positions]
    .sort((a, b) => a.reads - b.reads)
    .map(({ name, reads }) => `${reads} = ${name}`)
    .join(', ');
}

function stateText(state: SwitchState, { positions }: PanelSwitch): string {
  switch (state.kind) {
    case 'front':
      return 'front';
    case 'rear':
      return 'rear: there, out of reach in play';
    case 'fixed': {
      const reads = positions.find(({ name }) => name === state.position)?.reads;
      return `not there: always reads ${reads ?? '?'} (${state.position})`;
    }
    case 'absent':
      return 'not there: always reads 1';
    default:
      return state satisfies never;
  }
}

/** Where a setting's value comes from, on each console of the scheme. */
export interface SettingView {
  readonly name: string;
  readonly values: string;
  readonly startsAs: string;
  readonly cells: readonly string[];
}

export function viewSettings(scheme: Scheme): readonly SettingView[] {
  return scheme.settings.map(setting => ({
    name: setting.name,
    values: valuesText(setting),
    startsAs: setting.startsAs,
    cells: scheme.consoles.map(profile => settingText(setting, scheme, profile)),
  }));
}

/** A setting that the game keeps is a number from 0, in the order of its values. */
function valuesText({ values }: Setting): string {
  const [first] = values;
  const isRange =
    values.length > 2 && values.every((value, index) => value === String(Number(first) + index));
  return isRange
    ? `${first} to ${values.at(-1)}, kept as 0 to ${values.length - 1}`
    : values.map((value, index) => `${value} (${index})`).join(', ');
}

function settingText(setting: Setting, scheme: Scheme, profile: ConsoleProfile): string {
  const source = settingSource(setting, scheme, profile);
  switch (source.kind) {
    case 'game':
      return setting.setBy.kind === 'game'
        ? 'the game keeps it in RAM'
        : `the game keeps it in RAM, from ${source.startsAs}; stepped by the fallback`;
    case 'constant':
      return `always ${source.value}`;
    case 'switch': {
      const { bit, positions } = SWITCHES[source.name];
      const values = positions
        .map(({ name, reads }) => `${reads} (${name}) = ${source.values.get(name) ?? '?'}`)
        .join(', ');
      return `SWCHB D${bit}: ${values}`;
    }
    default:
      return source satisfies never;
  }
}
