import { createPhrases, type Phrases } from '../documents/phrase-book.js';
import type { PageData } from '../documents/tryout/page-data.js';
import { frameRate, toNumber } from '../hardware/clocks.js';
import { PORTS } from '../hardware/ports.js';
import { createAnswers } from './answers.js';
import { listenToButtons } from './buttons.js';
import { choose, speed } from './choices.js';
import { isFromPowerOn } from './desk.js';
import { partOf, setText } from './dom.js';
import { listenToFindings, type PowerOn, type Switchboard } from './findings.js';
import { readGamepads } from './gamepads.js';
import { listenToKeyboard } from './keyboard.js';
import { listenToPointers } from './pointer.js';
import { createTable, type Table } from './table.js';

/** Switches the console on and keeps the page going. */
export function openPage({ scheme, findings, language, texts }: PageData): void {
  const phrases = createPhrases(language, texts);
  const answers = createAnswers();
  const power: PowerOn = (play, replay, beginning) => createTable(play, phrases, replay, beginning);
  let layout: ReadonlyMap<string, string> = new Map();
  let table = power(choose(scheme));
  const change = (next: Table) => {
    table = next;
    table.nameKeys(layout);
    show();
  };
  const current = { desk: () => table.desk, now: () => table.clock.now(), keys: () => table.keys };
  listenToPointers(current);
  listenToKeyboard(current);
  const board: Switchboard = { scheme, phrases, power, change, answers };
  const showing = listenToFindings(findings, board);
  const pace = () => showing.speedOf(table) ?? speed();
  const show = () => {
    table.show();
    answers.follow(table.desk);
    showSession(table, phrases);
    showStanding(table.desk.isReplaying(), pace() === 0, phrases);
  };
  const goOn = (next: Table) => {
    showing.goOn();
    change(next);
  };
  listenToButtons({ ...board, table: () => table, change: goOn });
  void keyboardLayout().then(known => {
    layout = known;
    table.nameKeys(layout);
  });
  let before = performance.now();
  const frame = (now: number) => {
    showPads(readGamepads(current), phrases);
    table.clock.pass(now - before, pace(), () => table.read());
    before = now;
    show();
    requestAnimationFrame(frame);
  };
  show();
  requestAnimationFrame(frame);
}

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

/** At the controls: why they do nothing, and how to go on. */
function showStanding(isReplaying: boolean, isStopped: boolean, { say }: Phrases): void {
  const sentences = [
    ...(isReplaying ? [say('try away')] : []),
    ...(isStopped ? [say('try stands still')] : []),
  ];
  setText(partOf('standing'), sentences.join(' '));
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
