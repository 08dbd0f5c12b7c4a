import type { BindingRow, Mode, PlayerName } from '../../language/model.js';
import type { Phrases } from '../phrases.js';

export function playerWords(player: PlayerName, phrases: Phrases): string {
  return phrases.say(`player ${player}`);
}

/** Whoever plays this mode plays it alone: there is nobody to be told apart from. */
export const isForOne = ({ seats }: Mode): boolean => seats.every(({ players }) => players.length === 1);

/** Who does a row: the head under which the manual puts it. */
export function whoWords(row: BindingRow, phrases: Phrases): string {
  const who = row.who.value;
  switch (who.kind) {
    case 'game':
      return phrases.say('the game');
    case 'player':
      return isForOne(row.mode) ? phrases.say('you') : playerWords(who.player, phrases);
    case 'each':
      return phrases.say(isForOne(row.mode) ? 'you' : 'each player');
    case 'anyone': {
      const onPanel = row.alternatives.every(chord => chord.parts.every(part => part.kind === 'switch'));
      return phrases.say(onPanel ? 'anyone at the console' : 'anyone');
    }
    default:
      return who satisfies never;
  }
}
