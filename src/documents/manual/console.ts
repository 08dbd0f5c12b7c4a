import { CONSOLES, type ConsoleProfile, type SwitchState } from '../../hardware/consoles.js';
import { SWITCH_NAMES, type SwitchName } from '../../hardware/switches.js';
import type { BindingRow, Scheme } from '../../language/model.js';
import type { Phrases } from '../phrases.js';
import { type Speech, shortGesture } from '../wording/gestures.js';
import { panelWords, switchWords } from '../wording/machine.js';
import { actionWords } from '../wording/rows.js';
import { type FallbackBox, viewFallbacks } from './fallbacks.js';

/** Chapter 2: the console's switches, where they are and what the game makes of them. */
export interface ConsoleView {
  readonly intro: string;
  /** The switches the game uses, in the order of the panel, numbered from 1. */
  readonly calls: readonly SwitchCall[];
  readonly panels: readonly PanelView[];
  readonly caption: string;
  /** Which switches are at the back of some consoles, or of all. */
  readonly rearNotes: readonly string[];
  readonly boxes: readonly FallbackBox[];
}

export interface SwitchCall {
  readonly number: number;
  readonly name: SwitchName;
  readonly label: string;
  /** What it does, a line each. */
  readonly lines: readonly string[];
}

export interface PanelView {
  readonly console: string;
  readonly caption: string;
  /** For those who can't see the drawing. */
  readonly text: string;
  readonly switches: readonly PanelSwitchView[];
  readonly words: { readonly front: string; readonly rear: string; readonly power: string };
}

export interface PanelSwitchView {
  readonly name: SwitchName;
  readonly state: SwitchState;
  /** Null where the game does not use it. */
  readonly number: number | null;
}

export function viewConsole(scheme: Scheme, speech: Speech): ConsoleView {
  const { phrases } = speech;
  const calls = SWITCH_NAMES.filter(name => isUsed(name, scheme)).map((name, index) => ({
    number: index + 1,
    name,
    label: switchWords(name, phrases),
    lines: switchLines(name, scheme, speech),
  }));
  return {
    intro: phrases.say(calls.length === 0 ? 'console intro unused' : 'console intro'),
    calls,
    panels: drawnConsoles(scheme, calls).map(drawn => viewPanel(drawn, calls, speech)),
    caption: phrases.say('figure panels'),
    rearNotes: rearNotes(calls, scheme, phrases),
    boxes: viewFallbacks(
      scheme,
      speech,
      calls.map(({ name }) => name),
    ),
  };
}

function rearNotes(calls: readonly SwitchCall[], { consoles }: Scheme, phrases: Phrases): readonly string[] {
  const isRear = ({ name }: SwitchCall) => consoles.map(({ switches }) => switches[name].kind === 'rear');
  const everywhere = calls.filter(call => isRear(call).every(Boolean));
  const somewhere = calls.filter(call => isRear(call).some(Boolean) && !everywhere.includes(call));
  const say = (key: 'rear note' | 'rear note all', rear: readonly SwitchCall[]) =>
    rear.length === 0 ? [] : [phrases.say(key, { switches: phrases.and(rear.map(({ label }) => label)) })];
  return [...say('rear note all', everywhere), ...say('rear note', somewhere)];
}

/**
 * The consoles to draw, those with the same panel together. A console of the trade that lacks a used switch has a
 * box of words and is drawn only where no other is; how a console of the scheme's own looks, only a drawing tells.
 */
function drawnConsoles({ consoles }: Scheme, calls: readonly SwitchCall[]): readonly Drawn[] {
  const hasAll = ({ switches }: ConsoleProfile) => calls.every(({ name }) => isThere(switches[name]));
  const told = consoles.filter(profile => hasAll(profile) || !isOfTheTrade(profile));
  const drawn = new Map<string, Drawn>();
  for (const profile of told.length === 0 ? consoles : told) {
    const key = panelKey(profile);
    const names = [...(drawn.get(key)?.names ?? []), profile.name];
    drawn.set(key, { profile, names });
  }
  return [...drawn.values()];
}

/** A panel to draw, and the names of all consoles that have it. */
interface Drawn {
  readonly profile: ConsoleProfile;
  readonly names: readonly string[];
}

const panelKey = ({ switches }: ConsoleProfile): string =>
  JSON.stringify(SWITCH_NAMES.map(name => switches[name]));

const isOfTheTrade = (profile: ConsoleProfile): boolean =>
  CONSOLES.some(each => each.name === profile.name && panelKey(each) === panelKey(profile));

const isThere = ({ kind }: SwitchState): boolean => kind === 'front' || kind === 'rear';

/** A row, a setting or words of the scheme name the switch. */
function isUsed(name: SwitchName, scheme: Scheme): boolean {
  return (
    scheme.switchWords.some(words => words.name === name) ||
    scheme.settings.some(({ setBy }) => setBy.kind === 'switch' && setBy.name === name) ||
    rowsOn(name, scheme).length > 0
  );
}

export function rowsOn(name: SwitchName, scheme: Scheme): readonly BindingRow[] {
  const isOn = (row: BindingRow) =>
    row.alternatives.some(chord => chord.parts.some(part => part.kind === 'switch' && part.name === name));
  return scheme.modes.flatMap(({ rows }) => rows.filter(isOn));
}

/** The scheme's own words for the switch; without them, what its setting or its rows say. */
function switchLines(name: SwitchName, scheme: Scheme, speech: Speech): readonly string[] {
  const { phrases } = speech;
  const own = scheme.switchWords
    .filter(words => words.name === name && words.words !== '')
    .map(({ position, words }) =>
      position === null ? words : phrases.say('switch position', { position, words }),
    );
  if (own.length > 0) return own;
  return [
    ...settingLines(name, scheme, speech),
    ...rowsOn(name, scheme).map(row => rowLine(row, scheme, speech)),
  ];
}

function settingLines(name: SwitchName, scheme: Scheme, { phrases }: Speech): readonly string[] {
  return scheme.settings.flatMap(({ name: setting, setBy }) =>
    setBy.kind === 'switch' && setBy.name === name
      ? [...setBy.values].map(([position, value]) =>
          phrases.say('switch position', { position, words: phrases.say('switch sets', { setting, value }) }),
        )
      : [],
  );
}

function rowLine({ mode, action, gesture }: BindingRow, scheme: Scheme, speech: Speech): string {
  const { phrases } = speech;
  const isPlain = gesture === null || gesture.value.kind === 'press' || gesture.value.kind === 'repeat';
  const words = actionWords(action);
  const said = isPlain
    ? words
    : phrases.say('sentence with note', { sentence: words, note: shortGesture(gesture.value, speech) });
  return scheme.modes.length === 1 ? said : phrases.say('use in mode', { mode: mode.name, words: said });
}

function viewPanel({ profile, names }: Drawn, calls: readonly SwitchCall[], { phrases }: Speech): PanelView {
  const switches = SWITCH_NAMES.map(name => ({
    name,
    state: profile.switches[name],
    number: calls.find(call => call.name === name)?.number ?? null,
  }));
  const caption = phrases.and(names.map(name => panelWords(name, phrases)));
  const told = calls.map(({ name, number, label }) => {
    const { kind } = profile.switches[name];
    const where = kind === 'front' || kind === 'rear' ? kind : 'missing';
    return phrases.say(`panel switch ${where}`, { number, switch: label });
  });
  return {
    console: profile.name,
    caption: SWITCH_NAMES.every(name => isThere(profile.switches[name]))
      ? caption
      : phrases.say('panel with gaps', { console: caption }),
    text: phrases.say('panel text', { switches: told.join(' ') }),
    switches,
    words: {
      front: phrases.say('panel front'),
      rear: phrases.say('panel rear'),
      power: phrases.say('panel power'),
    },
  };
}
