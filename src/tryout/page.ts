import { playKey, startPlay } from '../gestures/play.js';
import type { WitnessedFinding } from '../handoff/trace/showing.js';
import { frameRate, toNumber } from '../hardware/clocks.js';
import type { Scheme } from '../language/model.js';
import { choose, say, showChoice, speed } from './choices.js';
import type { Desk } from './desk.js';
import { partOf, setText } from './dom.js';
import { listenToFindings } from './findings.js';
import { readGamepads } from './gamepads.js';
import { listenToKeyboard } from './keyboard.js';
import { listenToPointers } from './pointer.js';
import { createTable, type Table } from './table.js';
import { openTrace, saveTrace } from './trace-file.js';

export interface PageData {
  readonly scheme: Scheme;
  /** Those that have a witness, in the order of the page. */
  readonly findings: readonly WitnessedFinding[];
}

/** Switches the console on and keeps the page going. */
export function openPage({ scheme, findings }: PageData): void {
  let layout: ReadonlyMap<string, string> = new Map();
  let table = createTable(choose(scheme));
  const change = (next: Table) => {
    table = next;
    table.nameKeys(layout);
    table.show();
  };
  const current = { desk: () => table.desk, now: () => table.clock.now(), keys: () => table.keys };
  listenToPointers(current);
  listenToKeyboard(current);
  listenToButtons(scheme, () => table, change);
  const showing = listenToFindings(scheme, findings, change);
  void keyboardLayout().then(known => {
    layout = known;
    table.nameKeys(layout);
  });
  let before = performance.now();
  const frame = (now: number) => {
    showPads(readGamepads(current));
    table.clock.pass(now - before, showing.speedOf(table) ?? speed(), () => table.read());
    before = now;
    table.show();
    showSession(table);
    requestAnimationFrame(frame);
  };
  table.show();
  requestAnimationFrame(frame);
}

function listenToButtons(scheme: Scheme, table: () => Table, change: (next: Table) => void): void {
  const powerOn = () => {
    say('');
    change(createTable(choose(scheme)));
  };
  const wishes: Readonly<Record<string, () => void>> = {
    power: powerOn,
    step: () => table().clock.step(() => table().read()),
    replay() {
      const { play, session, beginning } = table().desk;
      change(createTable(play, session.reads(), beginning));
    },
    save() {
      if (isFromPowerOn(table().desk)) saveTrace(table().desk);
      else say('This session did not begin at power-on: switch off and on, and play it anew.');
    },
  };
  document.addEventListener('click', event => {
    const button = event.target instanceof Element ? event.target.closest('[data-do]') : null;
    wishes[button?.getAttribute('data-do') ?? '']?.();
  });
  partOf('choices').addEventListener('change', powerOn);
  // So that the keys play at once after a choice is made.
  document.addEventListener('change', event => {
    if (event.target instanceof HTMLSelectElement) event.target.blur();
  });
  listenToFile(scheme, change);
}

/** A trace that is opened is played again from power-on, on the console and with the seats that it names. */
function listenToFile(scheme: Scheme, change: (next: Table) => void): void {
  const input = document.querySelector<HTMLInputElement>('input[name="trace"]');
  input?.addEventListener('change', async () => {
    const text = await input.files?.[0]?.text().catch(() => null);
    input.value = '';
    if (typeof text !== 'string') return say('The file can’t be read.');
    const opened = openTrace(scheme, text);
    if (typeof opened === 'string') return say(opened);
    say(opened.says);
    showChoice(opened.play);
    change(createTable(opened.play, opened.reads));
  });
}

const isFromPowerOn = ({ play, beginning }: Desk): boolean =>
  beginning.mode === play.scheme.startMode && playKey(play, beginning) === playKey(play, startPlay(play));

function showSession({ desk, clock }: Table): void {
  const { standard, scheme } = desk.play;
  const count = desk.session.count();
  const seconds = (count * scheme.game.readEvery.value) / toNumber(frameRate(standard));
  const what = desk.isReplaying() ? 'Replaying' : clock.now() === 0 ? 'Switched on' : 'Recording';
  const since = isFromPowerOn(desk) ? 'power-on' : 'the beginning of the finding';
  setText(
    partOf('session'),
    `${what}: ${seconds.toFixed(1)} s, ${count} ${count === 1 ? 'read' : 'reads'} since ${since}`,
  );
}

function showPads(names: readonly string[]): void {
  const words = names
    .slice(0, 2)
    .map((_, index) => `gamepad ${index + 1} plays the ${index === 0 ? 'left' : 'right'} port`);
  setText(
    partOf('pads'),
    words.length === 0
      ? 'Press a key, a drawing or a button below it; a gamepad plays as soon as one of its buttons is pressed.'
      : `${words.join(', ')}; its centre buttons are SELECT and RESET.`,
  );
}

/** By code, what is printed on the keys, where the browser tells (Keyboard Map, a W3C draft). */
async function keyboardLayout(): Promise<ReadonlyMap<string, string>> {
  const { keyboard } = navigator as {
    keyboard?: { getLayoutMap?: () => Promise<ReadonlyMap<string, string>> };
  };
  return (await keyboard?.getLayoutMap?.().catch(() => null)) ?? new Map();
}
