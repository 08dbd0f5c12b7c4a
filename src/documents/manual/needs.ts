import type { Controller } from '../../hardware/controllers.js';
import type { Scheme, SeatedPlayer, SeatsRow } from '../../language/model.js';
import type { Phrases } from '../phrases.js';
import type { Speech } from '../wording/gestures.js';
import { consoleWords, controllerWords } from '../wording/machine.js';
import { playerWords } from '../wording/who.js';

/** Chapter 1: what to plug in for each way to sit down and play. */
export interface NeedsView {
  readonly intro: string;
  readonly rows: readonly NeedsRow[];
  readonly notes: readonly string[];
  readonly before: string;
}

export interface NeedsRow {
  readonly seats: string;
  /** `2 players`. */
  readonly players: string;
  /** `Left player, Right player` where there is more than one; who holds which paddle, a line each. */
  readonly who: readonly string[];
  readonly left: string;
  readonly right: string;
  readonly figure: SeatsFigureView;
}

/** What the figure of a seats row draws; null where nothing is plugged in. */
export interface SeatsFigureView {
  readonly caption: string;
  readonly text: string;
  readonly left: Controller | null;
  readonly right: Controller | null;
  readonly leftLabel: string;
  readonly rightLabel: string;
  readonly ports: { readonly left: string; readonly right: string };
}

export function viewNeeds(scheme: Scheme, speech: Speech): NeedsView {
  const { phrases } = speech;
  const consoles = phrases.and(scheme.consoles.map(profile => consoleWords(profile.name, phrases)));
  const standards = phrases.and(scheme.standards.map(({ name }) => name));
  return {
    intro: phrases.say(scheme.seats.length === 1 ? 'needs intro one' : 'needs intro'),
    rows: scheme.seats.map(seats => viewRow(seats, speech)),
    notes: [phrases.say('needs consoles', { consoles }), phrases.say('needs standards', { standards })],
    before: phrases.say('needs before'),
  };
}

function viewRow(seats: SeatsRow, { phrases }: Speech): NeedsRow {
  const left = controllerWords(seats.left, phrases);
  const right = controllerWords(seats.right, phrases);
  return {
    seats: seats.name,
    players: phrases.count('players', seats.players.length),
    who: whoLines(seats.players, phrases),
    left: phrases.sentence(left),
    right: phrases.sentence(right),
    figure: {
      caption: phrases.say('figure seats', { seats: seats.name }),
      text: phrases.say('figure seats text', { left, right }),
      left: seats.left,
      right: seats.right,
      leftLabel: left,
      rightLabel: right,
      ports: { left: phrases.say('port left'), right: phrases.say('port right') },
    },
  };
}

/** A pair of paddles is plugged in whole: even who plays alone must be told which of the two to take. */
function whoLines(players: readonly SeatedPlayer[], phrases: Phrases): readonly string[] {
  const told = players.map(({ name, letter }) => {
    const player = playerWords(name, phrases);
    return letter === '' ? player : phrases.say('player at paddle', { player, letter });
  });
  if (players.some(({ letter }) => letter !== '')) return told;
  return told.length > 1 ? [told.join(', ')] : [];
}
