import { badValue, notOneOf, type Spot } from './faults.js';
import type { PlayerName, SeatsRow, Who } from './model.js';
import { findIn, listWords, normal, rejoined, tidy } from './spelling.js';
import type { Words } from './words.js';

const PLAYERS: readonly PlayerName[] = ['left', 'right', 'left A', 'left B', 'right A', 'right B'];
const OTHERS = ['each', 'anyone', 'game'] as const;

/** Other words for who does something. */
const ALSO_CALLED: ReadonlyMap<string, Who['kind'] | PlayerName> = wordsBy([
  [
    'each',
    [
      'all',
      'both',
      'every',
      'everyone',
      'everybody',
      'players',
      'each player',
      'every player',
      'both players',
    ],
  ],
  ['anyone', ['any', 'anybody', 'any player', 'someone', 'either', 'player', 'whoever']],
  ['anyone', ['switch', 'switches', 'panel', 'console switch', 'console switches']],
  ['left', ['left player', 'player left']],
  ['right', ['right player', 'player right']],
  ['game', ['the game', 'computer', 'program', 'cpu']],
]);

/** No player: someone at the console where there is a control, the game by itself where there is none. */
const NO_PLAYER: ReadonlySet<string> = new Set(['console', 'the console', 'nobody', 'no one']);

/** Players by number, from 0: in seat order. */
const NUMBERED: ReadonlyMap<string, number> = wordsBy(
  (['one', 'two', 'three', 'four'] as const).map((word, index) => {
    const figure = `${index + 1}`;
    const ordinal = ['first', 'second', 'third', 'fourth'][index] ?? '';
    const others = [`player ${figure}`, `player ${word}`, `p${figure}`, figure, ordinal, `${ordinal} player`];
    return [index, others] as const;
  }),
);

function wordsBy<T>(
  entries: readonly (readonly [meant: T, words: readonly string[]])[],
): ReadonlyMap<string, T> {
  return new Map(entries.flatMap(([meant, words]) => words.map(word => [word, meant] as const)));
}

/** What the words for a player are understood by. */
interface Around {
  /** Those that the row can be played with. */
  readonly seats: readonly SeatsRow[];
  /** The row names a control. */
  readonly hasControl: boolean;
}

export function readWho(words: Words, around: Around, spot: Spot): Who | null {
  const wanted = normal(words.text);
  const kind = OTHERS.find(candidate => candidate === wanted);
  if (kind !== undefined) return { kind };
  const player = PLAYERS.find(candidate => normal(candidate) === wanted);
  if (player !== undefined) return { kind: 'player', player };
  const meant = meantBy(wanted, around);
  if (rejoined(words.text, findIn(PLAYERS), '') !== null)
    badValue(spot, words, 'Who', `“${tidy(words.text)}” names several players`, [
      'Write “each” for every seated player, or a row for each of them.',
    ]);
  else if (meant.length === 0) notOneOf(spot, words, 'Who', [...PLAYERS, ...OTHERS]);
  else
    badValue(spot, words, 'Who', `“${tidy(words.text)}” is not a word for a player`, [
      `Write ${listWords(meant)}.`,
    ]);
  return null;
}

/** A number means another seat with other controllers. */
function meantBy(wanted: string, { seats, hasControl }: Around): readonly string[] {
  if (NO_PLAYER.has(wanted)) return [hasControl ? 'anyone' : 'game'];
  const meant = ALSO_CALLED.get(wanted);
  if (meant !== undefined) return [meant];
  const index = NUMBERED.get(wanted);
  const seated = index === undefined ? [] : seats.flatMap(({ players }) => players[index]?.name ?? []);
  return [...new Set(seated)];
}
