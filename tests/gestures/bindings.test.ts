import { describe, expect, it } from 'vitest';
import { bindingsOf, needsSwitch } from '../../src/gestures/bindings.js';
import type { SwitchName } from '../../src/hardware/switches.js';
import type { SmallOptions, SmallRow } from '../support/small-scheme.js';
import {
  BARE,
  bindingTexts,
  engaged,
  fallbackSection,
  onBare,
  run,
  smallPlace,
  smallPlay,
} from './small-play.js';

const TIDE = 'Tide | gentle, strong | gentle | left difficulty: B gentle, A strong';
const HOP: SmallRow = { action: 'Hop', control: 'SELECT', gesture: 'press', who: 'anyone' };

/** Who steps the tide on a console without its switch, and with what. */
function tideSteppers(instead: string, seats: readonly string[]): readonly string[] {
  const extra = fallbackSection(`left difficulty | Tide | Yard: ${instead}`);
  const texts = bindingTexts(smallPlace([HOP], onBare({ seats, settings: [TIDE], extra }), BARE));
  return texts.filter(text => !text.includes('Hop'));
}

describe('a row of anyone', () => {
  const pair: SmallOptions = { seats: ['Pair | 2 | joystick | joystick'] };
  const of = (control: string) => bindingTexts(smallPlace([{ ...HOP, control }], pair));

  it('is done with the own control of any seated player', () => {
    expect(of('button')).toEqual(['anyone: Hop: left button', 'anyone: Hop: right button']);
  });

  it('is done with a switch and an own control of any of them together', () => {
    expect(of('SELECT + button')).toEqual([
      'anyone: Hop: SELECT + left button',
      'anyone: Hop: SELECT + right button',
    ]);
  });

  it('is done once where it names no own control', () => {
    expect(of('SELECT + right button or RESET')).toEqual([
      'anyone: Hop: SELECT + right button',
      'anyone: Hop: RESET',
    ]);
  });
});

describe('a fallback for a setting', () => {
  const pair = ['Pair | 2 | joystick | joystick'];

  it('is a row of the player of the port that it names', () => {
    expect(tideSteppers('right stick up press', pair)).toEqual(['right: Tide: next: right stick up']);
    expect(tideSteppers('right B paddle button press', ['Four | 4 | paddles | paddles'])).toEqual([
      'right B: Tide: next: right B paddle button',
    ]);
  });

  it('looks for the port in all of a chord', () => {
    expect(tideSteppers('button + right stick up press', pair)).toEqual([
      'right: Tide: next: right button + right stick up',
    ]);
    expect(tideSteppers('SELECT + left stick up press', pair)).toEqual([
      'left: Tide: next: SELECT + left stick up',
    ]);
  });

  it('is anyone’s where it names no port', () => {
    expect(tideSteppers('SELECT press', pair)).toEqual(['anyone: Tide: next: SELECT']);
    expect(tideSteppers('stick up press', pair)).toEqual([
      'anyone: Tide: next: left stick up',
      'anyone: Tide: next: right stick up',
    ]);
  });

  it('numbers its alternatives', () => {
    const extra = fallbackSection('left difficulty | Tide | Yard: left stick up or SELECT press');
    const { scheme, mode, seats, profile } = smallPlace([HOP], onBare({ settings: [TIDE], extra }), BARE);
    const steps = bindingsOf(scheme, mode, seats, profile).filter(({ action }) => action === null);
    expect(steps.map(({ player, alternative }) => `${player} ${alternative}`)).toEqual([
      'left 0',
      'anyone 1',
    ]);
  });

  it('is no binding where the setting stays, in another mode, or where the switch is there', () => {
    const rows = [HOP, { ...HOP, mode: 'Barn', action: 'Rest' }];
    const inYard = (instead: string, console: number) => {
      const extra = fallbackSection(`left difficulty | Tide | ${instead}`);
      return bindingTexts(smallPlace(rows, onBare({ settings: [TIDE], extra }), console));
    };
    const plain = ['anyone: Hop: SELECT'];
    expect(inYard('Yard: left stick up press', BARE)).toEqual([...plain, 'left: Tide: next: left stick up']);
    expect(inYard('Yard: left stick up press', 0)).toEqual(plain);
    expect(inYard('Barn: left stick up press', BARE)).toEqual(plain);
    expect(inYard('stays strong', BARE)).toEqual(plain);
  });
});

describe('a fallback for an action', () => {
  const extra = fallbackSection('left difficulty | Dive | Yard: button press');
  const dive: SmallRow = { action: 'Dive', control: 'left difficulty', gesture: 'flip to B' };
  const inYard = (...rows: readonly SmallRow[]) => bindingTexts(smallPlace(rows, onBare({ extra }), BARE));

  it('stands for each row that needs the switch', () => {
    expect(inYard(dive, { ...dive, gesture: 'flip' })).toEqual([
      'left: Dive: left difficulty',
      'left: Dive: left difficulty',
      'left: Dive: left button',
      'left: Dive: left button',
    ]);
  });

  it('does not stand for a row that can do without, nor for the game’s', () => {
    const dusk: SmallRow = { who: 'game', action: 'Dive', control: '', gesture: '' };
    expect(inYard({ ...dive, gesture: 'at A' }, dusk)).toEqual(['left: Dive: left difficulty']);
    expect(inYard({ ...HOP, action: 'Dive' })).toEqual(['anyone: Dive: SELECT']);
  });

  it('has its effects after those of all rows, and before those of the fallbacks after it', () => {
    const flip = (action: string, name: string, level: number): SmallRow => ({
      action,
      control: `${name} difficulty`,
      gesture: 'flip',
      does: `Level: ${level}`,
    });
    const rows = [
      flip('Sink', 'left', 1),
      flip('Dive', 'right', 2),
      { action: 'Hop', control: 'button', gesture: 'press', does: 'Level: 3' },
      { action: 'Duck', control: 'stick up', gesture: 'press', does: 'Level: 4' },
    ];
    const play = (...fallbacks: readonly string[]) =>
      smallPlay(
        rows,
        onBare({ settings: ['Level | 0 to 4 | 0 | game'], extra: fallbackSection(...fallbacks) }),
        BARE,
      );
    const sink = 'left difficulty | Sink | Yard: button press';
    const swim = 'right difficulty | Dive | Yard: button press';
    const button = [engaged('left button')];
    expect(run(play(sink, swim), button)).toMatchObject({
      fired: ['Hop, Sink, Dive'],
      values: { Level: '2' },
    });
    expect(run(play(swim, sink), button).values).toEqual({ Level: '1' });
    expect(run(play(sink), button).values).toEqual({ Level: '1' });
  });
});

describe('a row in need of a switch', () => {
  /** On the console whose left difficulty is fixed at A and that has no RESET. */
  function needs(name: SwitchName, control: string, gesture: string, who = 'anyone'): boolean {
    const { mode, profile } = smallPlace([{ who, action: 'Act', control, gesture }], onBare(), BARE);
    return mode.rows.every(row => needsSwitch(row, name, profile));
  }

  it('is one of which no alternative can be done without it', () => {
    expect(needs('RESET', 'RESET', 'press')).toBe(true);
    expect(needs('RESET', 'RESET + button', 'press')).toBe(true);
    expect(needs('RESET', 'RESET or RESET + button', 'press')).toBe(true);
    expect(needs('RESET', 'RESET or button', 'press')).toBe(false);
    expect(needs('RESET', 'SELECT', 'press')).toBe(false);
    expect(needs('RESET', 'button', 'press')).toBe(false);
  });

  it('is not one that asks for the position which the console fixes', () => {
    expect(needs('left difficulty', 'left difficulty', 'at A')).toBe(false);
    expect(needs('left difficulty', 'left difficulty', 'at B')).toBe(true);
    expect(needs('left difficulty', 'left difficulty', 'flip to A')).toBe(true);
    expect(needs('left difficulty', 'left difficulty', 'flip')).toBe(true);
    expect(needs('right difficulty', 'right difficulty', 'at B')).toBe(false);
  });

  it('is never one that the game does by itself', () => {
    expect(needs('RESET', '', '', 'game')).toBe(false);
  });
});
