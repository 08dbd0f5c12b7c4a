import type {
  Chord,
  Condition,
  Effect,
  Gesture,
  Mode,
  Scheme,
  SeatedPlayer,
  SeatsRow,
  Setting,
} from '../../src/language/model.js';

/**
 * The second opinion on coverage, part 1: what can be done in a mode. The three plain-*.ts files are written from
 * SEMANTICS.md alone, with nothing of the check and nothing of src/gestures in them; slow and simple on purpose.
 */

export type Console = Scheme['consoles'][number];
export type Standard = Scheme['standards'][number];
export type State = { mode: Mode; values: Map<Setting, string>; switches: Map<string, string> };

/** One way to do a row or a fallback: by whom, and what it takes. */
export type Way = {
  mode: Mode;
  who: string;
  action: string;
  must: boolean;
  /** The row or fallback that it comes from. */
  from: object;
  kind: 'row' | 'fallback' | 'game';
  gesture: Gesture | null;
  /** Control names, `left stick up` or `RESET`; switches among them by their own names. */
  parts: string[];
  when: readonly Condition[];
  effects: readonly Effect[];
};

export const TWO_POSITION: Record<string, [string, string]> = {
  'TV type': ['COLOR', 'B-W'],
  'left difficulty': ['B', 'A'],
  'right difficulty': ['B', 'A'],
};

export const fixedAt = (profile: Console, name: string): string | null => {
  const state = Object.entries(profile.switches).find(([key]) => key === name)?.[1];
  return state?.kind === 'fixed' ? state.position : null;
};
export const kindOf = (profile: Console, name: string): string =>
  Object.entries(profile.switches).find(([key]) => key === name)?.[1].kind ?? '';
export const isGone = (profile: Console, name: string) => ['fixed', 'absent'].includes(kindOf(profile, name));

/** Frames a second: colour clock over 228 clocks a line and the lines of a frame (SEMANTICS.md, Time). */
export const RATE: Record<string, number> = {
  NTSC: 315e6 / 88 / (228 * 262),
  PAL: (4 * 4433618.75) / 5 / (228 * 312),
  SECAM: (4 * 4433618.75) / 5 / (228 * 312),
};

export function ownControls(controls: string[], player: SeatedPlayer, seats: SeatsRow): string[] {
  const own = seats[player.port]?.controls ?? [];
  return own
    .filter(control => controls.includes(control.name) && control.seat === player.letter)
    .map(control => `${player.name} ${control.name}`);
}

/** The contacts that one word of a row can mean; several for a group or where A or B is left open. */
export function meanings(
  part: Chord['parts'][number],
  player: SeatedPlayer | null,
  seats: SeatsRow,
): string[] {
  if (part.kind === 'switch') return [part.name];
  const names: Record<string, string[]> = {
    stick: ['stick up', 'stick down', 'stick left', 'stick right'],
    'stick left/right': ['stick left', 'stick right'],
    'stick up/down': ['stick up', 'stick down'],
  };
  const controls = names[part.name] ?? [part.name];
  if (part.port === null) return player === null ? [] : ownControls(controls, player, seats);
  const isOwn = player?.port === part.port;
  const letters = part.letter !== '' ? [part.letter] : isOwn ? [player.letter] : ['', 'A', 'B'];
  return letters.flatMap(letter => {
    const controller = seats[part.port ?? 'left'];
    const owner = letter === '' ? part.port : `${part.port} ${letter}`;
    return (
      controller?.controls
        .filter(control => controls.includes(control.name) && control.seat === letter)
        .map(control => `${owner} ${control.name}`) ?? []
    );
  });
}

export function combinations(lists: string[][]): string[][] {
  const [first, ...rest] = lists;
  if (first === undefined) return [[]];
  return first.flatMap(head => combinations(rest).map(tail => [head, ...tail]));
}

export const isTurning = (part: string) => / (paddle|wheel)$/.test(part);

const POSITIONAL = ['at', 'flip', 'flip to'];
const OPPOSITES = [
  ['stick up', 'stick down'],
  ['stick left', 'stick right'],
];

/** Whether a gesture on these controls can ever happen on a console. */
function canHappen(gesture: Gesture, parts: string[], { profile, standard, every }: Place): boolean {
  const [only] = parts;
  if (only === undefined || parts.some(part => kindOf(profile, part) === 'absent')) return false;
  if (POSITIONAL.includes(gesture.kind)) return parts.length === 1 && canBeAt(gesture, only, profile);
  if (gesture.kind === 'turn') return parts.length === 1 && isTurning(only);
  if (parts.some(part => isTurning(part) || TWO_POSITION[part] !== undefined)) return false;
  const isTorn = OPPOSITES.some(pair =>
    ['left', 'right'].some(port => pair.every(name => parts.includes(`${port} ${name}`))),
  );
  if (isTorn) return false;
  return (gesture.kind !== 'tap' && gesture.kind !== 'double tap') || readsIn(gesture, standard, every) > 1;
}

function canBeAt(gesture: Gesture, name: string, profile: Console): boolean {
  const positions = TWO_POSITION[name];
  if (positions === undefined) return false;
  if ('position' in gesture && !positions.includes(gesture.position)) return false;
  const fixed = fixedAt(profile, name);
  return fixed === null || (gesture.kind === 'at' && gesture.position === fixed);
}

function readsIn(gesture: Gesture, standard: Standard, every: number): number {
  if (!('time' in gesture)) return 1;
  const { unit, amount } = gesture.time;
  const time = Number(amount.numerator) / Number(amount.denominator);
  return Math.ceil((unit === 'seconds' ? time * (RATE[standard.name] ?? 0) : time) / every);
}

export interface Place {
  profile: Console;
  seats: SeatsRow;
  standard: Standard;
  /** Frames between two reads. */
  every: number;
}

type Who = Mode['rows'][number]['who']['value'];
type Rest = Omit<Way, 'who' | 'parts' | 'gesture'>;

/** Every way to do some chords: by each player who may, with each meaning of the words. */
function expand(who: Who, chords: readonly Chord[], gesture: Gesture, place: Place, rest: Rest): Way[] {
  return chords.flatMap(chord =>
    doersOf(who, chord, place.seats).flatMap(doer =>
      combinations(chord.parts.map(part => meanings(part, doer, place.seats)))
        .filter(parts => canHappen(gesture, parts, place))
        .map(parts => ({
          ...rest,
          gesture,
          parts,
          who: who.kind === 'anyone' ? 'anyone' : (doer?.name ?? ''),
        })),
    ),
  );
}

function doersOf(who: Who, chord: Chord, seats: SeatsRow): (SeatedPlayer | null)[] {
  const hasOwn = chord.parts.some(part => part.kind === 'control' && part.port === null);
  if (who.kind === 'anyone' && !hasOwn) return [null];
  return seats.players.filter(({ name }) => who.kind !== 'player' || name === who.player);
}

/** All ways of a mode, those that can never happen left out. */
export function waysOf(scheme: Scheme, mode: Mode, place: Place): Way[] {
  const rows = mode.rows.flatMap((row): Way[] => {
    const rest = { ...factsOf(row), mode, from: row };
    if (row.gesture === null) return [{ ...rest, kind: 'game', who: 'game', gesture: null, parts: [] }];
    return expand(row.who.value, row.alternatives, row.gesture.value, place, { ...rest, kind: 'row' });
  });
  const fallbacks = scheme.fallbacks
    .filter(({ without }) => isGone(place.profile, without))
    .flatMap(fallback => fallbackWays(fallback, mode, place));
  return [...rows, ...fallbacks];
}

const factsOf = ({ action, conditions, effects }: Mode['rows'][number]) => ({
  action: action.name,
  must: action.need === 'must',
  when: conditions,
  effects,
});

function fallbackWays(fallback: Scheme['fallbacks'][number], mode: Mode, place: Place): Way[] {
  const { instead, subject, without, at } = fallback;
  if (instead.kind !== 'binding' || instead.mode !== mode) return [];
  const gesture = instead.gesture.value;
  if (subject.kind === 'setting') {
    const { setting } = subject;
    const rest: Rest = {
      mode,
      action: `${setting.name}: next`,
      must: false,
      from: fallback,
      kind: 'fallback',
      when: [],
      effects: [{ kind: 'step', setting, by: 1, at }],
    };
    return instead.alternatives.flatMap(chord =>
      steppers(chord, place.seats).flatMap(who => expand(who, [chord], gesture, place, rest)),
    );
  }
  return mode.rows
    .filter(row => row.action === subject.action && needs(row, without, place.profile))
    .flatMap(row =>
      expand(row.who.value, instead.alternatives, gesture, place, {
        ...factsOf(row),
        mode,
        from: fallback,
        kind: 'fallback',
      }),
    );
}

/** The port's player, or either of two; anyone for a console switch. */
function steppers(chord: Chord, { players }: SeatsRow): Who[] {
  for (const part of chord.parts) {
    if (part.kind !== 'control' || part.port === null) continue;
    return players
      .filter(({ port, letter }) => port === part.port && (part.letter === '' || part.letter === letter))
      .map(({ name }) => ({ kind: 'player', player: name }));
  }
  return [{ kind: 'anyone' }];
}

function needs({ gesture, alternatives }: Mode['rows'][number], without: string, profile: Console): boolean {
  if (gesture === null) return false;
  const { value } = gesture;
  if (value.kind === 'at' && value.position === fixedAt(profile, without)) return false;
  return alternatives.every(({ parts }) =>
    parts.some(part => part.kind === 'switch' && part.name === without),
  );
}
