import type { BindingRow, PlayerName } from '../../language/model.js';
import type { Phrases } from '../phrases.js';

export function playerWords(player: PlayerName, phrases: Phrases): string {
  return phrases.say(`player ${player}`);
}

/** Who does a row: the head under which the manual puts it. */
export function whoWords(row: BindingRow, phrases: Phrases): string {
  const who = row.who.value;
  switch (who.kind) {
    case 'game':
      return phrases.say('the game');
    case 'player':
      return playerWords(who.player, phrases);
    case 'each':
      return phrases.say(row.mode.seats.every(({ players }) => players.length === 1) ? 'you' : 'each player');
    case 'anyone': {
      const onPanel = row.alternatives.every(chord => chord.parts.every(part => part.kind === 'switch'));
      return phrases.say(onPanel ? 'anyone at the console' : 'anyone');
    }
    default:
      return who satisfies never;
  }
}
