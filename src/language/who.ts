import { notOneOf, type Spot } from './faults.js';
import type { PlayerName, Who } from './model.js';
import { normal } from './spelling.js';
import type { Words } from './words.js';

const PLAYERS: readonly PlayerName[] = ['left', 'right', 'left A', 'left B', 'right A', 'right B'];
const OTHERS = ['each', 'anyone', 'game'] as const;

export function readWho(words: Words, spot: Spot): Who | null {
  const wanted = normal(words.text);
  const kind = OTHERS.find(candidate => candidate === wanted);
  if (kind !== undefined) return { kind };
  const player = PLAYERS.find(candidate => normal(candidate) === wanted);
  if (player !== undefined) return { kind: 'player', player };
  notOneOf(spot, words, 'Who', [...PLAYERS, ...OTHERS]);
  return null;
}
