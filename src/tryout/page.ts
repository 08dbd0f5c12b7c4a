import { createPlay, type Play } from '../gestures/play.js';
import { frameRate, toNumber } from '../hardware/clocks.js';
import type { Scheme } from '../language/model.js';
import { partOf, setText } from './dom.js';
import { readGamepads } from './gamepads.js';
import { listenToKeyboard } from './keyboard.js';
import { listenToPointers } from './pointer.js';
import { createTable, type Table } from './table.js';
import { openTrace, saveTrace } from './trace-file.js';

/** Switches the console on and keeps the page going. */
export function openPage(scheme: Scheme): void {
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
  void keyboardLayout().then(known => {
    layout = known;
    table.nameKeys(layout);
  });
  let before = performance.now();
  const frame = (now: number) => {
    showPads(readGamepads(current));
    table.clock.pass(now - before, speed(), () => table.read());
    before = now;
    table.show();
    showSession(table);
    requestAnimationFrame(frame);
  };
  table.show();
  requestAnimationFrame(frame);
}

function selectOf(name: string): HTMLSelectElement {
  const found = document.querySelector<HTMLSelectElement>(`select[name="${name}"]`);
  if (found === null) throw new RangeError(`the page has no choice ${name}`);
  return found;
}

const speed = (): number => Number(selectOf('speed').value);

/** What the lists at the head of the page say. */
function choose(scheme: Scheme): Play {
  const chosen = <T>(name: string, list: readonly T[]): T => {
    const found = list[Number(selectOf(name).value)] ?? list[0];
    if (found === undefined) throw new RangeError(`the scheme has no ${name}`);
    return found;
  };
  return createPlay({
    scheme,
    profile: chosen('console', scheme.consoles),
    seats: chosen('seats', scheme.seats),
    standard: chosen('standard', scheme.standards),
  });
}

/** The lists say what a trace was made on. */
function showChoice({ scheme, profile, seats, standard }: Play): void {
  selectOf('console').value = String(scheme.consoles.indexOf(profile));
  selectOf('seats').value = String(scheme.seats.indexOf(seats));
  selectOf('standard').value = String(scheme.standards.indexOf(standard));
}

function listenToButtons(scheme: Scheme, table: () => Table, change: (next: Table) => void): void {
  const powerOn = () => {
    say('');
    change(createTable(choose(scheme)));
  };
  const wishes: Readonly<Record<string, () => void>> = {
    power: powerOn,
    step: () => table().clock.step(() => table().read()),
    replay: () => change(createTable(table().desk.play, table().desk.session.reads())),
    save: () => saveTrace(table().desk),
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

function say(text: string): void {
  const target = partOf('message');
  setText(target, text);
  target.hidden = text === '';
}

function showSession({ desk, clock }: Table): void {
  const { standard, scheme } = desk.play;
  const count = desk.session.count();
  const seconds = (count * scheme.game.readEvery.value) / toNumber(frameRate(standard));
  const what = desk.isReplaying() ? 'Replaying' : clock.now() === 0 ? 'Switched on' : 'Recording';
  setText(partOf('session'), `${what}: ${seconds.toFixed(1)} s, ${count} reads since power-on`);
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
