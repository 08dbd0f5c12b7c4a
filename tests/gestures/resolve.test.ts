import { describe, expect, it } from 'vitest';
import { resolveChord } from '../../src/gestures/resolve.js';
import { BARE, bindingTexts, onBare, smallPlace } from './small-play.js';

const FOUR = ['Four | 4 | paddles | paddles'];

const ways = (who: string, control: string, seats: readonly string[], gesture = 'press') =>
  bindingTexts(smallPlace([{ who, action: 'Act', control, gesture }], { seats }));

describe('a control', () => {
  it('is the own one of the player, also where the own port is named', () => {
    expect(ways('left B', 'paddle button', FOUR)).toEqual(['left B: Act: left B paddle button']);
    expect(ways('left B', 'left paddle button', FOUR)).toEqual(['left B: Act: left B paddle button']);
  });

  it('is either of a pair where a player of the other port leaves it open', () => {
    expect(ways('right B', 'left paddle button', FOUR)).toEqual([
      'right B: Act: left A paddle button',
      'right B: Act: left B paddle button',
    ]);
  });

  it('is the one named outright, whoever does it', () => {
    expect(ways('left B', 'left A paddle button', FOUR)).toEqual(['left B: Act: left A paddle button']);
    expect(ways('right A', 'left B paddle button', FOUR)).toEqual(['right A: Act: left B paddle button']);
    expect(ways('anyone', 'right A paddle', FOUR, 'turn')).toEqual(['anyone: Act: right A paddle']);
  });

  it('can be named by a port where nobody sits', () => {
    expect(ways('left', 'right button', ['Solo | 1 | joystick | joystick'])).toEqual([
      'left: Act: right button',
    ]);
  });

  it('is nowhere at an empty port, on another controller, or where the console lacks it', () => {
    expect(ways('left', 'right button', ['Solo | 1 | joystick | empty'])).toEqual([]);
    expect(ways('left', 'key 5', ['Solo | 1 | joystick | empty'])).toEqual([]);
    const reset = [{ who: 'anyone', action: 'Act', control: 'RESET', gesture: 'press' }];
    expect(bindingTexts(smallPlace(reset, onBare()))).toEqual(['anyone: Act: RESET']);
    expect(bindingTexts(smallPlace(reset, onBare(), BARE))).toEqual([]);
  });

  it('is nobody’s own without a player, while switches and named ports are there', () => {
    const controls = ['button', 'RESET', 'left button', 'left button + button'];
    const { mode, seats, profile } = smallPlace(
      controls.map((control, index) => ({ action: `Act ${index}`, control, gesture: 'press' })),
    );
    const found = mode.rows.map(({ alternatives }) =>
      alternatives
        .flatMap(chord => resolveChord(chord, seats, null, profile))
        .map(({ parts }) => parts[0]?.id),
    );
    expect(found).toEqual([[], ['RESET'], ['left button'], []]);
  });
});
