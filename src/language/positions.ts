import { type Position, SWITCH_NAMES, SWITCHES, type SwitchName } from '../hardware/switches.js';
import { normal } from './spelling.js';

export const POSITIONS: readonly Position[] = [
  ...new Set(SWITCH_NAMES.flatMap(name => SWITCHES[name].positions.map(position => position.name))),
];

export function findPosition(text: string): Position | undefined {
  return POSITIONS.find(position => normal(position) === normal(text));
}

export function findSwitch(text: string): SwitchName | undefined {
  const wanted = normal(text);
  return SWITCH_NAMES.find(name => normal(name) === wanted);
}

export function positionsOf(name: SwitchName): readonly Position[] {
  return SWITCHES[name].positions.map(position => position.name);
}
