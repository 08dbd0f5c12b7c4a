import fc from 'fast-check';
import { writeScheme } from './random-scheme-text.js';

const CONTROLS = [
  ['RESET', 'press'],
  ['SELECT', 'repeat every 0.5 s'],
  ['RESET or SELECT', 'press'],
  ['RESET + SELECT', 'press'],
  ['button', 'press'],
  ['button', 'tap under 0.018 s'],
  ['stick', 'held'],
  ['stick up + button', 'hold 1 s'],
  ['stick up + stick down', 'press'],
  ['left button', 'release'],
  ['right stick left', 'press'],
  ['key 5', 'press'],
  ['paddle', 'turn'],
  ['paddle button', 'double tap within 0.018 s'],
  ['trigger', 'press'],
  ['left difficulty', 'flip'],
  ['left difficulty', 'flip to A'],
  ['right difficulty', 'at A'],
  ['right difficulty', 'at B'],
  ['left difficulty or right difficulty', 'flip to B'],
  ['left difficulty or button', 'press'],
  ['TV type', 'flip'],
  ['TV type', 'at B-W'],
] as const;

/**
 * Small schemes that are wrong in every way that coverage looks at: modes nobody leads to, settings that nothing
 * sets, switches that are missing, seats that lack a control. As Markdown, so that a failing one can be read.
 */
export const randomScheme: fc.Arbitrary<string> = fc
  .record({
    consoles: fc.uniqueArray(fc.constantFrom(...'six-switch four-switch no-difficulty bare odd'.split(' ')), {
      minLength: 1,
      maxLength: 3,
    }),
    standards: fc.constantFrom('NTSC', 'PAL', 'NTSC, PAL'),
    seats: fc.uniqueArray(fc.constantFrom('Solo', 'Duet', 'Keys', 'Knobs', 'Guns'), {
      minLength: 1,
      maxLength: 3,
    }),
    settings: fc.integer({ min: 0, max: 3 }),
    switched: fc.subarray(['Wind', 'Tide', 'Lamp', 'Mist']),
    needs: fc.tuple(need(), need(), need(), need()),
    modes: fc.array(randomMode(), { minLength: 2, maxLength: 4 }),
    fallbacks: fc.array(randomFallback(), { maxLength: 3 }),
    variations: fc.array(fc.array(fc.nat(), { minLength: 8, maxLength: 8 }), { maxLength: 3 }),
  })
  .map(writeScheme);

function need() {
  return fc.constantFrom('must', 'nice');
}

/** Numbers pick from what the scheme has, modulo its length. */
function randomMode() {
  return fc.record({
    kind: fc.constantFrom('menu', 'play', 'play', 'pause'),
    seats: fc.option(fc.nat(), { freq: 2 }),
    rows: fc.array(randomRow(), { maxLength: 5 }),
  });
}

function randomRow() {
  return fc.record({
    who: fc.constantFrom('anyone', 'anyone', 'each', 'left', 'right', 'left A', 'game'),
    action: fc.nat({ max: 3 }),
    control: fc.constantFrom(...CONTROLS),
    when: fc.array(fc.tuple(fc.nat(), fc.boolean(), fc.nat()), { maxLength: 2 }),
    goTo: fc.option(fc.nat(), { freq: 3 }),
    set: fc.array(fc.tuple(fc.nat(), fc.constantFrom('next', 'previous', 'value'), fc.nat()), {
      maxLength: 2,
    }),
  });
}

function randomFallback() {
  return fc.record({
    without: fc.constantFrom('left difficulty', 'right difficulty', 'TV type', 'RESET', 'SELECT'),
    subject: fc.nat(),
    instead: fc.constantFrom('button press', 'left stick up press', 'SELECT press', 'key 1 press', 'stays'),
    mode: fc.nat(),
    value: fc.nat(),
  });
}
