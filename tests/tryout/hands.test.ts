import { describe, expect, it } from 'vitest';
import { contactType } from '../../src/gestures/contacts.js';
import { createPlay, type Play, startPlay } from '../../src/gestures/play.js';
import { createHands, type Hands } from '../../src/tryout/hands.js';
import { randomRead } from '../handoff/schemes.js';
import { createRandom, type Random } from '../support/random.js';
import { smallScheme } from '../support/small-scheme.js';

/** One read at 60 Hz, ms. */
const READ = 1000 / 60;

function playOf(controllers: readonly [string, string], game: Readonly<Record<string, string>> = {}): Play {
  const [left, right] = controllers;
  const row = { who: 'anyone', action: 'Go', control: 'RESET', gesture: 'press' };
  const seats = [`Here | 1 | ${left} | ${right}`];
  const scheme = smallScheme([row], { game, seats });
  const [sitting] = scheme.seats;
  const [profile] = scheme.consoles;
  const [standard] = scheme.standards;
  if (!sitting || !profile || !standard) throw new Error('an empty scheme');
  return createPlay({ scheme, seats: sitting, profile, standard });
}

/** Hands at a desk, and what they have engaged read by read. */
function sit(play: Play) {
  const hands = createHands(play);
  let levels: readonly number[] = startPlay(play).levels;
  let now = 0;
  let isFirst = true;
  const levelOf = (id: string) => levels[play.contacts.findIndex(contact => contact.id === id)];
  const contact = (id: string) => {
    const found = play.contacts.find(each => each.id === id);
    if (found === undefined) throw new Error(`no ${id}`);
    return found;
  };
  return {
    press: (id: string, source = 'a', at = now) => hands.press(contact(id), source, at),
    release: (id: string, source = 'a', at = now) => hands.release(contact(id), source, at),
    letGo: (source?: string) => hands.letGo(now, source),
    flip: (id: string) => hands.flip(contact(id)),
    turn: (id: string, degrees: number) => hands.turn(contact(id), degrees),
    turnTo: (id: string, lines: number) => hands.turnTo(contact(id), lines),
    keepTurning: (id: string, way: number, source: string) => hands.keepTurning(contact(id), way, source),
    levelOf,
    now: () => now,
    engaged: () =>
      play.contacts.flatMap(({ id }, index) => (levels[index] === 1 && !/type|diff/.test(id) ? [id] : [])),
    read(time = READ) {
      now += time;
      levels = hands.read(levels, now, isFirst);
      isFirst = false;
      return this.engaged();
    },
  };
}

describe('at each read', () => {
  it('at most one control becomes engaged, in the order of the presses', () => {
    const desk = sit(playOf(['joystick', 'joystick']));
    desk.press('left stick up', 'a', 0);
    desk.press('right button', 'b', 1);
    desk.press('left button', 'c', 2);
    expect(desk.read()).toEqual(['left stick up']);
    expect(desk.read()).toEqual(['left stick up', 'right button']);
    expect(desk.read()).toEqual(['left stick up', 'left button', 'right button']);
  });

  it('any number is let go', () => {
    const desk = sit(playOf(['joystick', 'joystick']));
    desk.press('left stick up', 'a', 0);
    desk.press('left button', 'b', 0);
    for (let read = 0; read < 6; read++) desk.read();
    desk.letGo();
    expect(desk.read()).toEqual([]);
  });

  it('a switch that is moved goes before a press, and moves once', () => {
    const desk = sit(playOf(['joystick', 'empty']));
    desk.press('left button', 'a', 0);
    desk.flip('TV type');
    expect(desk.read()).toEqual([]);
    expect(desk.levelOf('TV type')).toBe(1);
    expect(desk.read()).toEqual(['left button']);
    expect(desk.levelOf('TV type')).toBe(1);
  });

  it('of two directions that exclude each other the later one counts, then the earlier one again', () => {
    const desk = sit(playOf(['joystick', 'empty']));
    desk.press('left stick left', 'a', 0);
    desk.read();
    desk.press('left stick right', 'b', desk.now());
    expect(desk.read()).toEqual(['left stick right']);
    expect(desk.read()).toEqual(['left stick right']);
    for (let read = 0; read < 4; read++) desk.read();
    desk.release('left stick right', 'b', desk.now());
    expect(desk.read()).toEqual(['left stick left']);
  });

  it('what two press stays engaged until both have let go', () => {
    const desk = sit(playOf(['joystick', 'empty']));
    desk.press('left button', 'key', 0);
    desk.press('left button', 'pad', 0);
    for (let read = 0; read < 5; read++) desk.read();
    desk.release('left button', 'key', desk.now());
    expect(desk.read()).toEqual(['left button']);
    desk.release('left button', 'pad', desk.now());
    expect(desk.read()).toEqual([]);
  });
});

describe('a press that is let go at once', () => {
  const click = (play: Play, time: number) => {
    const desk = sit(play);
    desk.read(time);
    desk.press('left button', 'a', desk.now() + 1);
    desk.release('left button', 'a', desk.now() + 2);
    return [desk.read(time), desk.read(time), desk.read(time), desk.read(time)].map(list => list.length);
  };

  it('counts as 50 ms long', () => {
    expect(click(playOf(['joystick', 'empty']), READ)).toEqual([1, 1, 1, 0]);
  });

  it('is missed where inputs are read seldom and nothing latches it, as on the console', () => {
    const slow = { 'Reads inputs': 'every 6 frames' };
    expect(click(playOf(['joystick', 'empty'], slow), 6 * READ)).toEqual([0, 0, 0, 0]);
    const latched = { ...slow, 'Button latch': 'cleared each read' };
    expect(click(playOf(['joystick', 'empty'], latched), 6 * READ)).toEqual([1, 0, 0, 0]);
  });

  it('is not lost behind another', () => {
    const desk = sit(playOf(['joystick', 'joystick']));
    for (const id of ['left stick up', 'left stick left', 'left button', 'right button', 'right stick up']) {
      desk.press(id, id, 0);
      desk.release(id, id, 0);
    }
    const seen = new Set<string>();
    for (let read = 0; read < 8; read++) for (const id of desk.read()) seen.add(id);
    expect(seen.size).toBe(5);
  });
});

describe('what turns', () => {
  it('begins in the middle of a knob’s way and stops at its ends; clockwise is fewer lines', () => {
    const desk = sit(playOf(['paddles', 'empty']));
    desk.read();
    expect(desk.levelOf('left A paddle')).toBe(190);
    desk.turn('left A paddle', 33);
    desk.read();
    expect(desk.levelOf('left A paddle')).toBe(152);
    desk.turn('left A paddle', 1000);
    desk.read();
    expect(desk.levelOf('left A paddle')).toBe(0);
    desk.turnTo('left A paddle', 1000);
    desk.read();
    expect(desk.levelOf('left A paddle')).toBe(380);
  });

  it('goes on while a key is kept down, as fast at any rate of reads', () => {
    const turnedBy = (every: number) => {
      const desk = sit(playOf(['paddles', 'empty'], { 'Reads inputs': `every ${every} frames` }));
      desk.read();
      desk.keepTurning('left A paddle', -1, 'key');
      for (let frame = 0; frame < 24; frame += every) desk.read(every * READ);
      desk.letGo('key');
      desk.read();
      return desk.levelOf('left A paddle');
    };
    expect(turnedBy(2)).toBeGreaterThan(300);
    expect(Math.abs((turnedBy(2) ?? 0) - (turnedBy(4) ?? 0))).toBeLessThanOrEqual(1);
  });

  it('is at most one step of a wheel at a read', () => {
    const desk = sit(playOf(['wheel', 'empty']));
    desk.turn('left wheel', 90);
    const steps = Array.from({ length: 6 }, () => {
      desk.read();
      return desk.levelOf('left wheel');
    });
    expect(steps).toEqual([1, 2, 3, 4, 4, 4]);
  });
});

/** One thing that hands may do. */
function wildMove(play: Play, hands: Hands, random: Random, now: number): void {
  const contact = random.pick(play.contacts);
  const source = random.pick(['one', 'two']);
  const type = contactType(contact);
  if (type === 'turning') hands.turn(contact, random.below(80) - 40);
  else if (type === 'two-position') hands.flip(contact);
  else if (random.chance(0.6)) hands.press(contact, source, now);
  else hands.release(contact, source, now);
}

/** What became engaged or was moved at a read. */
const changed = ({ contacts }: Play, before: readonly number[], after: readonly number[]) =>
  contacts.filter((contact, index) => {
    const [from, to] = [before[index] ?? 0, after[index] ?? 0];
    return contactType(contact) === 'momentary'
      ? to > from
      : contactType(contact) !== 'turning' && to !== from;
  });

const isEngaged = ({ contacts }: Play, levels: readonly number[], id: string) =>
  levels[contacts.findIndex(contact => contact.id === id)] === 1;

/** Controls that are engaged together and can't be. */
const impossible = (play: Play, levels: readonly number[]) =>
  (['left', 'right'] as const).flatMap(port =>
    (play.seats[port]?.opposites ?? []).filter(pair =>
      pair.every(name => isEngaged(play, levels, `${port} ${name}`)),
    ),
  );

it('wild hands make only what hands can make, with every controller', () => {
  let changes = 0;
  for (let seed = 0; seed < 30; seed++) {
    const scheme = randomRead(seed);
    const random = createRandom(seed);
    const play = createPlay({
      scheme,
      seats: random.pick(scheme.startMode.seats),
      profile: random.pick(scheme.consoles),
      standard: random.pick(scheme.standards),
    });
    const hands = createHands(play);
    let levels: readonly number[] = startPlay(play).levels;
    for (let read = 1; read < 200; read++) {
      wildMove(play, hands, random, read * READ);
      const next = hands.read(levels, read * READ, read === 1);
      const more = changed(play, levels, next);
      expect(more.length).toBeLessThanOrEqual(1);
      expect(impossible(play, next)).toEqual([]);
      changes += more.length;
      levels = next;
    }
  }
  expect(changes).toBeGreaterThan(1000);
});
