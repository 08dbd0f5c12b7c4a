import { describe, expect, it } from 'vitest';
import { contactType } from '../../src/gestures/contacts.js';
import { createPlay, type Play, startPlay, stepPlay } from '../../src/gestures/play.js';
import { createHandoff } from '../../src/handoff/create.js';
import { readLog } from '../../src/handoff/trace/log.js';
import { readsOfLog } from '../../src/handoff/trace/reads-of-log.js';
import { traceScheme } from '../../src/handoff/trace/trace.js';
import { writeTrace } from '../../src/handoff/trace/write-trace.js';
import type { Scheme } from '../../src/language/model.js';
import { createClock } from '../../src/tryout/clock.js';
import { createDesk, type Desk } from '../../src/tryout/desk.js';
import { createKeyMap } from '../../src/tryout/keys.js';
import { eachRead } from '../../src/tryout/session.js';
import { exampleSchemes, randomRead } from '../handoff/schemes.js';
import { createRandom, type Random } from '../support/random.js';
import { smallScheme } from '../support/small-scheme.js';

const READ = 1000 / 60;

function anyPlay(scheme: Scheme, random: Random): Play {
  return createPlay({
    scheme,
    seats: random.pick(scheme.startMode.seats),
    profile: random.pick(scheme.consoles),
    standard: random.pick(scheme.standards),
  });
}

/** What fires, read by read, while somebody plays with everything. */
function playWildly(desk: Desk, random: Random, reads: number): readonly string[] {
  return Array.from({ length: reads }, (_, read) => {
    const contact = random.pick(desk.play.contacts);
    const now = read * READ;
    if (random.chance(0.5)) desk.hands.press(contact, 'hand', now);
    else desk.hands.letGo(now);
    if (random.chance(0.1)) desk.hands.turn(contact, 20);
    if (random.chance(0.1)) desk.hands.flip(contact);
    const row = desk.state().mode.rows.find(({ who }) => who.value.kind === 'game');
    if (row !== undefined && random.chance(0.05)) desk.happen(row);
    return firedBy(desk, now);
  });
}

function firedBy(desk: Desk, now: number): string {
  const { fired, game, state } = desk.read(now);
  const names = [
    ...fired.map(({ actionName, player }) => `${actionName} ${player}`),
    ...game.map(one => one.action.name),
  ];
  return `${names.join()} → ${state.mode.name}`;
}

const SCHEMES = [
  ...exampleSchemes().map(({ scheme }) => scheme),
  ...Array.from({ length: 40 }, (_, seed) => randomRead(seed)),
];

describe('a session', () => {
  it('fires the same when it is replayed', () => {
    for (const [seed, scheme] of SCHEMES.entries()) {
      const random = createRandom(seed);
      const desk = createDesk(anyPlay(scheme, random));
      const fired = playWildly(desk, random, 120);
      const again = createDesk(desk.play, desk.session.reads());
      expect(again.isReplaying()).toBe(true);
      expect(fired.map(() => firedBy(again, 0))).toEqual(fired);
      expect(again.isReplaying()).toBe(false);
      expect(again.session.reads()).toEqual(desk.session.reads());
    }
  });

  it('is a trace with which the scheme agrees, on the console and seats that it names', () => {
    for (const [seed, scheme] of SCHEMES.entries()) {
      const random = createRandom(seed);
      const desk = createDesk(anyPlay(scheme, random));
      const fired = playWildly(desk, random, 120);
      const handoff = createHandoff(scheme);
      const text = writeTrace(desk.play, handoff, desk.session.reads());
      const log = readLog(text);
      expect(log.origin).toEqual({
        console: desk.play.profile.name,
        seats: desk.play.seats.name,
        standard: desk.play.standard.name,
      });
      expect(log.faults).toEqual([]);
      expect(traceScheme(scheme, text)).toEqual({ reads: 120, differences: [], faults: [] });
      const again = createDesk(desk.play, readsOfLog(desk.play, handoff, log));
      expect(fired.map(() => firedBy(again, 0))).toEqual(fired);
    }
  });

  it('is told from a build that fires something else', () => {
    const [scheme] = SCHEMES;
    if (scheme === undefined) throw new Error('no scheme');
    const random = createRandom(5);
    const desk = createDesk(anyPlay(scheme, random));
    playWildly(desk, random, 120);
    const text = writeTrace(desk.play, createHandoff(scheme), desk.session.reads());
    const changed = text.replace(/"fires":\["[^\]]+\]/, '"fires":[]');
    expect(changed).not.toBe(text);
    expect(traceScheme(scheme, changed).differences).toHaveLength(1);
  });

  it('keeps what does not change as one, and gives it back read by read', () => {
    const scheme = smallScheme([{ who: 'anyone', action: 'Go', control: 'RESET', gesture: 'press' }]);
    const desk = createDesk(anyPlay(scheme, createRandom(1)));
    for (let read = 0; read < 5000; read++) desk.read(read * READ);
    expect(desk.session.count()).toBe(5000);
    expect(desk.session.reads()).toHaveLength(1);
    expect([...eachRead(desk.session.reads())]).toHaveLength(5000);
  });
});

/** A console with one knob in the left port, a button, and something that the game does by itself. */
function knobPlay(): Play {
  const rows = [
    { who: 'left A', action: 'Steer', control: 'paddle', gesture: 'turn' },
    { who: 'game', action: 'Rain', control: '', gesture: '' },
  ];
  return anyPlay(smallScheme(rows, { seats: ['Here | 2 | paddles | empty'] }), createRandom(1));
}

describe('after a replay', () => {
  it('a knob stays where the replay left it', () => {
    const desk = createDesk(knobPlay());
    const [knob] = desk.play.contacts.filter(({ id }) => id === 'left A paddle');
    if (knob === undefined) throw new Error('no knob');
    desk.read(0);
    desk.hands.turn(knob, 66);
    desk.read(READ);
    const again = createDesk(desk.play, desk.session.reads());
    again.read(0);
    again.read(READ);
    expect(again.isReplaying()).toBe(false);
    const { fired, state } = again.read(2 * READ);
    expect(fired).toEqual([]);
    expect(state.levels).toEqual(desk.state().levels);
    // 66 of 330 degrees over 380 lines, from the middle.
    expect(state.levels[again.play.contacts.indexOf(knob)]).toBe(190 - (66 * 380) / 330);
  });

  it('nothing happens that was done while it ran', () => {
    const desk = createDesk(knobPlay());
    for (let read = 0; read < 5; read++) desk.read(read * READ);
    const again = createDesk(desk.play, desk.session.reads());
    for (const contact of again.play.contacts) {
      if (contactType(contact) === 'two-position') again.hands.flip(contact);
      else again.hands.press(contact, 'hand', 0);
    }
    for (const contact of again.play.contacts.filter(({ id }) => id.endsWith(' paddle'))) {
      again.hands.turn(contact, 30);
      again.hands.keepTurning(contact, 1, 'hand');
      again.hands.turnTo(contact, 5);
    }
    const row = again.state().mode.rows.find(({ who }) => who.value.kind === 'game');
    if (row === undefined) throw new Error('no row of the game');
    again.happen(row);
    while (again.isReplaying()) again.read(0);
    for (let read = 5; read < 10; read++) {
      const { fired, game, state } = again.read(read * READ);
      expect([fired, game]).toEqual([[], []]);
      expect(state.levels).toEqual(desk.state().levels);
    }
  });
});

it('a session that is being replayed is whole at any moment', () => {
  const random = createRandom(3);
  const desk = createDesk(anyPlay(randomRead(3), random));
  playWildly(desk, random, 60);
  const again = createDesk(desk.play, desk.reads());
  for (let read = 0; read < 20; read++) again.read(read * READ);
  expect(again.reads()).toEqual(desk.reads());
  while (again.isReplaying()) again.read(0);
  expect(again.reads()).toEqual(desk.reads());
});

describe('the clock', () => {
  // 59.9227 and 49.8607 frames a second: SEMANTICS “Time”, from ITU-R BT.1700 and G [TIA 3].
  it.each([
    ['NTSC', 'every frame', 599],
    ['PAL', 'every frame', 498],
    ['NTSC', 'every 2 frames', 299],
    ['PAL', 'every 4 frames', 124],
  ])('makes the reads of ten seconds on %s, %s', (standard, every, count) => {
    const scheme = smallScheme([{ who: 'anyone', action: 'Go', control: 'RESET', gesture: 'press' }], {
      game: { 'TV standards': standard, 'Reads inputs': every },
    });
    const play = anyPlay(scheme, createRandom(1));
    const run = (speed: number, pictures: number) => {
      const clock = createClock(play);
      let reads = 0;
      for (let picture = 0; picture < pictures; picture++) clock.pass(1000 / 144, speed, () => reads++);
      return reads;
    };
    expect(run(1, 1440)).toBe(count);
    expect(Math.abs(run(0.25, 1440) - count / 4)).toBeLessThanOrEqual(1);
    expect(run(0, 1440)).toBe(0);
  });

  it('does not make up for a time when nobody looked', () => {
    const scheme = smallScheme([{ who: 'anyone', action: 'Go', control: 'RESET', gesture: 'press' }]);
    const clock = createClock(anyPlay(scheme, createRandom(1)));
    let reads = 0;
    clock.pass(3_600_000, 1, () => reads++);
    expect(reads).toBeLessThan(20);
    expect(clock.now()).toBe(250);
  });
});

describe('the keys', () => {
  const controllers = ['joystick', 'paddles', 'keypad', 'wheel', 'desk', 'empty'];
  const own = [
    '## Controllers',
    '',
    '| Controller | Control | Line |',
    '| --- | --- | --- |',
    ...['up', 'down', 'left', 'right', 'button', 'pot A', 'pot B'].map(
      line => `| desk | ${line} key | ${line} |`,
    ),
  ].join('\n');
  const pairs = controllers
    .flatMap(left => controllers.map(right => [left, right] as const))
    .filter(([left, right]) => left !== right || left !== 'empty');

  it.each(pairs)('work every control of %s and %s, each by its own', (left, right) => {
    const scheme = smallScheme([{ who: 'anyone', action: 'Go', control: 'RESET', gesture: 'press' }], {
      seats: [`Here | 1 | ${left} | ${right}`],
      extra: own,
    });
    const { contacts } = anyPlay(scheme, createRandom(1));
    const { byCode, codesOf } = createKeyMap(contacts);
    const codes = contacts.flatMap(({ id }) => codesOf.get(id) ?? []);
    expect(contacts.filter(({ id }) => (codesOf.get(id) ?? []).length === 0)).toEqual([]);
    expect(new Set(codes).size).toBe(codes.length);
    for (const { id } of contacts)
      for (const code of codesOf.get(id) ?? []) expect(byCode.get(code)?.contact.id).toBe(id);
  });
});

it('a read goes on from the state before it', () => {
  const scheme = smallScheme([{ who: 'anyone', action: 'Go', control: 'RESET', gesture: 'press' }]);
  const desk = createDesk(anyPlay(scheme, createRandom(1)));
  expect(desk.state()).toEqual(startPlay(desk.play));
  const step = stepPlay(desk.play, desk.state(), { engaged: new Set() });
  desk.read(0);
  expect(desk.state()).toEqual(step.state);
});
