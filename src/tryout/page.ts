import { createPhrases, type Phrases } from '../documents/phrase-book.js';
import type { PageData } from '../documents/tryout/page-data.js';
import { playKey, startPlay } from '../gestures/play.js';
import { frameRate, toNumber } from '../hardware/clocks.js';
import { PORTS } from '../hardware/ports.js';
import { choose, say, showChoice, speed } from './choices.js';
import type { Desk } from './desk.js';
import { partOf, setText } from './dom.js';
import { listenToFindings, type PowerOn, type Switchboard } from './findings.js';
import { readGamepads } from './gamepads.js';
import { listenToKeyboard } from './keyboard.js';
import { listenToPointers } from './pointer.js';
import { createTable, type Table } from './table.js';
import { openTrace, saveTrace } from './trace-file.js';

/** Switches the console on and keeps the page going. */
export function openPage({ scheme, findings, language, texts }: PageData): void {
  const phrases = createPhrases(language, texts);
  const power: PowerOn = (play, replay, beginning) => createTable(play, phrases, replay, beginning);
  let layout: ReadonlyMap<string, string> = new Map();
  let table = power(choose(scheme));
  const change = (next: Table) => {
    table = next;
    table.nameKeys(layout);
    table.show();
  };
  const current = { desk: () => table.desk, now: () => table.clock.now(), keys: () => table.keys };
  listenToPointers(current);
  listenToKeyboard(current);
  listenToButtons({ scheme, phrases, power, table: () => table, change });
  const showing = listenToFindings(findings, { scheme, phrases, power, change });
  void keyboardLayout().then(known => {
    layout = known;
    table.nameKeys(layout);
  });
  let before = performance.now();
  const frame = (now: number) => {
    showPads(readGamepads(current), phrases);
    table.clock.pass(now - before, showing.speedOf(table) ?? speed(), () => table.read());
    before = now;
    table.show();
    showSession(table, phrases);
    requestAnimationFrame(frame);
  };
  table.show();
  requestAnimationFrame(frame);
}

interface Buttons extends Switchboard {
  readonly table: () => Table;
}

function listenToButtons({ scheme, phrases, power, table, change }: Buttons): void {
  const powerOn = () => {
    say('');
    change(power(choose(scheme)));
  };
  const wishes: Readonly<Record<string, () => void>> = {
    power: powerOn,
    step: () => table().clock.step(() => table().read()),
    replay() {
      const { play, reads, beginning } = table().desk;
      change(power(play, reads(), beginning));
    },
    save() {
      if (isFromPowerOn(table().desk)) saveTrace(table().desk);
      else say(phrases.say('try not from power'));
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
  listenToFile({ scheme, phrases, power, change });
}

/** A trace that is opened is played again from power-on, on the console and with the seats that it names. */
function listenToFile({ scheme, phrases, power, change }: Switchboard): void {
  const input = document.querySelector<HTMLInputElement>('input[name="trace"]');
  input?.addEventListener('change', async () => {
    const text = await input.files?.[0]?.text().catch(() => null);
    input.value = '';
    if (typeof text !== 'string') return say(phrases.say('try no file'));
    const opened = openTrace(scheme, text, phrases);
    if (typeof opened === 'string') return say(opened);
    say(opened.says);
    showChoice(opened.play);
    change(power(opened.play, opened.reads));
  });
}

const isFromPowerOn = ({ play, beginning }: Desk): boolean =>
  beginning.mode === play.scheme.startMode && playKey(play, beginning) === playKey(play, startPlay(play));

function showSession({ desk }: Table, { say: words, count, number }: Phrases): void {
  const { standard, scheme } = desk.play;
  const reads = desk.session.count();
  const seconds = (reads * scheme.game.readEvery.value) / toNumber(frameRate(standard));
  const given = {
    what: words(desk.isReplaying() ? 'try replaying' : 'try recording'),
    seconds: number(Math.floor(seconds * 10) / 10),
    reads: count('try reads', reads),
  };
  const text = isFromPowerOn(desk) ? words('try since power', given) : words('try since finding', given);
  setText(partOf('session'), text);
}

function showPads(names: readonly string[], { say: words }: Phrases): void {
  const pads = PORTS.slice(0, names.length).map((port, index) =>
    words('try pad', { number: index + 1, port: words(`port ${port}`) }),
  );
  setText(
    partOf('pads'),
    pads.length === 0 ? words('try keys') : `${pads.join('; ')}. ${words('try pad centre')}`,
  );
}

/** By code, what is printed on the keys, where the browser tells (Keyboard Map, a W3C draft). */
async function keyboardLayout(): Promise<ReadonlyMap<string, string>> {
  const { keyboard } = navigator as {
    keyboard?: { getLayoutMap?: () => Promise<ReadonlyMap<string, string>> };
  };
  return (await keyboard?.getLayoutMap?.().catch(() => null)) ?? new Map();
}
