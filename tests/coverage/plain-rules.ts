import type { Mode, Scheme } from '../../src/language/model.js';
import { distanceTo, explore, isReached, type Known, leadingTo, valueIn } from './plain-search.js';
import { type Console, fixedAt, isGone, kindOf, type State, type Way, waysOf } from './plain-ways.js';

type Variation = Scheme['variations'][number];

/** The second opinion on coverage, part 3: the rules and the verdicts. */

export interface Findings {
  /** `rule|mode|action or setting|player|value|console|seats|standard` */
  holds: Set<string>;
  /** `console|seats|standard|mode` → verdict and length of its recipe (−1: none). */
  cells: Map<string, string>;
  /** `console|seats|standard|variation` → length of its recipe (−1: none). */
  variations: Map<string, number>;
  /** How many states there are in the largest graph. */
  states: number;
}

export function searchPlainly(scheme: Scheme): Findings {
  const all = scheme.consoles.flatMap(profile =>
    scheme.seats.flatMap(seats =>
      scheme.standards.map(standard => explore(scheme, profile, seats, standard)),
    ),
  );
  const holds = new Set<string>();
  for (const known of all) judge(scheme, known, all, holds);
  judgeRows(scheme, all, holds);
  const cells = new Map<string, string>();
  const variations = new Map<string, number>();
  for (const known of all) {
    const where = whereOf(known);
    for (const mode of scheme.modes) {
      const recipe = distanceTo(known, state => state.mode === mode);
      cells.set(`${where}|${mode.name}`, `${verdict(scheme, known, mode, holds)} ${recipe}`);
    }
    for (const variation of scheme.variations.filter(({ seats }) => seats.includes(known.seats)))
      variations.set(
        `${where}|${variation.name}`,
        distanceTo(known, state => isPlayed(scheme, known, variation)({ state })),
      );
  }
  return { holds, cells, variations, states: Math.max(...all.map(({ states }) => states.size)) };
}

const whereOf = ({ profile, seats, standard }: Known) => `${profile.name}|${seats.name}|${standard.name}`;

/** Who can do an action in a mode in some reachable state. */
function doers(known: Known, mode: Mode, action: string, kinds: Way['kind'][]): Set<string> {
  const ways = known.ways.get(mode) ?? [];
  const done = ways.filter(way => way.action === action && kinds.includes(way.kind) && known.usable.has(way));
  return new Set(done.map(({ who }) => who));
}

type Say = (rule: string, mode?: string, subject?: string, player?: string, value?: string) => void;

function judge(scheme: Scheme, known: Known, all: Known[], holds: Set<string>): void {
  const say: Say = (rule, mode = '', subject = '', player = '', value = '') => {
    holds.add([rule, mode, subject, player, value, whereOf(known)].join('|'));
  };
  const peers = all.filter(each => each.seats === known.seats && each.standard === known.standard);
  const offered = scheme.modes.filter(mode => mode.seats.includes(known.seats));
  for (const mode of offered) {
    judgeMode(scheme, known, mode, offered.length, say);
    judgeActions(scheme, known, mode, peers, say);
  }
  judgeVariations(scheme, known, say);
  judgeSettings(scheme, known, peers, say);
  judgeMusts(scheme, known, say);
  judgeSeats(scheme, known, all, say);
}

function judgeMode(scheme: Scheme, known: Known, mode: Mode, offered: number, say: Say): void {
  if (!isReached(known, mode)) say('unreachable-mode', mode.name);
  const fresh = leadingTo(known, state => state.mode === scheme.startMode || state.mode.kind === 'menu');
  const elsewhere = leadingTo(known, state => state.mode !== mode);
  for (const [key, { state }] of known.states) {
    if (state.mode !== mode) continue;
    if (offered > 1 && !elsewhere.has(key)) say('no-way-out', mode.name);
    if (!fresh.has(key)) say('no-fresh-start', mode.name);
  }
  if (mode.kind !== 'play') return;
  for (const way of known.ways.get(mode) ?? [])
    if (way.parts.some(part => kindOf(known.profile, part) === 'rear'))
      say('behind-the-console', mode.name, way.action, way.who);
}

function judgeActions(scheme: Scheme, known: Known, mode: Mode, peers: Known[], say: Say): void {
  if (!isReached(known, mode)) return;
  for (const { name } of scheme.actions) {
    const here = doers(known, mode, name, ['row', 'fallback', 'game']);
    const there = new Set(peers.flatMap(peer => [...doers(peer, mode, name, ['row'])]));
    if (here.has('anyone') || here.has('game')) continue;
    const players = known.seats.players.map(player => player.name);
    const lacking = players.filter(player => !here.has(player));
    // What anyone can do elsewhere is lost here for those who can't.
    const losers = lacking.length === players.length ? ['anyone'] : lacking;
    for (const who of there) {
      if (who === 'game' || here.has(who)) continue;
      for (const loser of who === 'anyone' ? losers : [who]) say('lost-action', mode.name, name, loser);
    }
  }
}

/** A play mode is reached with the variation's values. */
export function isPlayed(scheme: Scheme, { profile }: Pick<Known, 'profile'>, { values }: Variation) {
  return ({ state }: { state: State }): boolean =>
    state.mode.kind === 'play' &&
    [...values].every(([setting, value]) => valueIn(scheme, setting, profile, state) === value);
}

function judgeVariations(scheme: Scheme, known: Known, say: Say): void {
  for (const variation of scheme.variations) {
    if (!variation.seats.includes(known.seats)) continue;
    if ([...known.states.values()].some(isPlayed(scheme, known, variation))) continue;
    const isDeclared = scheme.fallbacks.some(
      ({ without, subject, instead }) =>
        isGone(known.profile, without) &&
        subject.kind === 'setting' &&
        instead.kind === 'stays' &&
        variation.values.has(subject.setting) &&
        variation.values.get(subject.setting) !== instead.value,
    );
    if (!isDeclared) say('unreachable-variation', '', variation.name);
  }
}

function judgeSettings(scheme: Scheme, known: Known, peers: Known[], say: Say): void {
  const { profile } = known;
  for (const setting of scheme.settings) {
    const { setBy, name } = setting;
    const rows = scheme.fallbacks.filter(
      ({ subject }) => subject.kind === 'setting' && subject.setting === setting,
    );
    const isLacking =
      setBy.kind === 'switch' &&
      isGone(profile, setBy.name) &&
      !rows.some(({ without }) => without === setBy.name);
    if (isLacking) say('no-fallback', '', name);
    if (isLacking || rows.some(row => row.instead.kind === 'stays' && isGone(profile, row.without))) continue;
    for (const value of peers.flatMap(peer => [...(peer.values.get(setting) ?? [])]))
      if (!known.values.get(setting)?.has(value)) say('lost-value', '', name, '', value);
  }
}

/** A console with every switch at the front: there each row has all the bindings that it is written for. */
const complete = (profile: Console): Console => ({
  ...profile,
  switches: {
    'TV type': { kind: 'front' },
    'left difficulty': { kind: 'front' },
    'right difficulty': { kind: 'front' },
    SELECT: { kind: 'front' },
    RESET: { kind: 'front' },
  },
});

function judgeMusts(scheme: Scheme, known: Known, say: Say): void {
  const { profile, seats, standard } = known;
  const place = { profile: complete(profile), seats, standard, every: scheme.game.readEvery.value };
  for (const mode of scheme.modes.filter(each => each.seats.includes(seats))) {
    const ways = waysOf({ ...scheme, fallbacks: [] }, mode, place);
    for (const action of scheme.actions.filter(({ need }) => need === 'must')) {
      const own = ways.filter(way => way.action === action.name);
      for (const name of Object.keys(profile.switches)) {
        const isAnswered = scheme.fallbacks.some(
          ({ subject, without }) =>
            subject.kind === 'action' && subject.action === action && without === name,
        );
        const others = (known.ways.get(mode) ?? []).filter(
          ({ kind, action: its }) => kind === 'fallback' && its === action.name,
        );
        if (isGone(profile, name) && isNeeded([...own, ...others], name, profile) && !isAnswered)
          say('no-fallback', mode.name, action.name);
      }
    }
  }
}

const isNeeded = (ways: Way[], name: string, profile: Console): boolean =>
  ways.length > 0 &&
  ways.every(
    ({ kind, gesture, parts }) =>
      kind !== 'game' &&
      parts.includes(name) &&
      !(gesture?.kind === 'at' && gesture.position === fixedAt(profile, name)),
  );

function judgeSeats(scheme: Scheme, known: Known, all: Known[], say: Say): void {
  const { seats, profile } = known;
  const names = new Set(scheme.actions.map(({ name }) => name));
  const own = (each: Known, mode: Mode) =>
    (each.ways.get(mode) ?? []).filter(way => way.kind !== 'game' && names.has(way.action));
  for (const mode of scheme.modes.filter(each => each.seats.includes(seats))) {
    const others = all.filter(
      each => each.profile === profile && each.standard === known.standard && each.seats !== seats,
    );
    for (const { action } of others.flatMap(other => own(other, mode)))
      if (!own(known, mode).some(way => way.action === action)) say('seat-gap', mode.name, action);
    for (const action of names) {
      const who = new Set(
        own(known, mode)
          .filter(way => way.action === action && way.who !== 'anyone')
          .map(way => way.who),
      );
      if (who.size > 0 && seats.players.some(({ name }) => !who.has(name)))
        say('one-sided', mode.name, action);
    }
  }
}

function judgeRows(scheme: Scheme, all: Known[], holds: Set<string>): void {
  for (const mode of scheme.modes) {
    if (!all.some(known => isReached(known, mode))) continue;
    const used = new Set(
      all.flatMap(({ usable }) =>
        [...usable].filter(({ kind }) => kind !== 'fallback').map(({ from }) => from),
      ),
    );
    for (const [index, row] of mode.rows.entries())
      if (!used.has(row)) holds.add(`dead-binding|${mode.name}|${row.action.name}|row ${index}`);
  }
}

function verdict(scheme: Scheme, known: Known, mode: Mode, holds: Set<string>): string {
  if (!mode.seats.includes(known.seats)) return 'not offered';
  const here = [...holds]
    .map(hold => hold.split('|'))
    .filter(hold => hold.slice(5).join('|') === whereOf(known));
  const concerns = here.filter(([, where]) => where === '' || where === mode.name);
  const musts = new Set(scheme.actions.filter(({ need }) => need === 'must').map(({ name }) => name));
  const breaks = ['unreachable-mode', 'no-way-out', 'no-fallback'];
  if (
    concerns.some(
      ([rule = '', , action = '']) => breaks.includes(rule) || (rule === 'lost-action' && musts.has(action)),
    )
  )
    return 'broken';
  const alters = ['no-fresh-start', 'lost-action', 'lost-value', 'behind-the-console'];
  const isReplaced = scheme.fallbacks.some(({ without }) => isGone(known.profile, without));
  return isReplaced || concerns.some(([rule = '']) => alters.includes(rule)) ? 'altered' : 'plays';
}
