import { badValue, notOneOf, type Spot } from './faults.js';
import type { PlayerName, Who } from './model.js';
import { findIn, normal, rejoined, tidy } from './spelling.js';
import type { Words } from './words.js';

const PLAYERS: readonly PlayerName[] = ['left', 'right', 'left A', 'left B', 'right A', 'right B'];
const OTHERS = ['each', 'anyone', 'game'] as const;

/** Other words for who does something. */
const ALSO_CALLED: ReadonlyMap<string, string> = new Map(
  Object.entries({
    each: [
      'all',
      'both',
      'every',
      'everyone',
      'everybody',
      'each player',
      'every player',
      'both players',
      'players',
    ],
    anyone: ['any', 'anybody', 'any player', 'someone', 'either', 'player', 'whoever'],
    left: ['left player', 'player left', 'player 1', 'player one', 'p1', '1', 'first', 'first player'],
    right: ['right player', 'player right', 'player 2', 'player two', 'p2', '2', 'second', 'second player'],
    game: ['the game', 'console', 'computer', 'program', 'cpu', 'nobody', 'no one'],
  }).flatMap(([who, words]) => words.map(word => [word, who] as const)),
);

export function readWho(words: Words, spot: Spot): Who | null {
  const wanted = normal(words.text);
  const kind = OTHERS.find(candidate => candidate === wanted);
  if (kind !== undefined) return { kind };
  const player = PLAYERS.find(candidate => normal(candidate) === wanted);
  if (player !== undefined) return { kind: 'player', player };
  const meant = ALSO_CALLED.get(wanted);
  if (rejoined(words.text, findIn(PLAYERS), '') !== null)
    badValue(spot, words, 'Who', `“${tidy(words.text)}” names several players`, [
      'Write “each” for every seated player, or a row for each of them.',
    ]);
  else if (meant === undefined) notOneOf(spot, words, 'Who', [...PLAYERS, ...OTHERS]);
  else
    badValue(spot, words, 'Who', `“${tidy(words.text)}” is not a word for a player`, [`Write “${meant}”.`]);
  return null;
}
