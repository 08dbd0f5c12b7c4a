import { type Contact, contactType, controlContact, switchContact } from '../../gestures/contacts.js';
import { settingSource } from '../../gestures/settings.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { MomentarySwitchName, SwitchName } from '../../hardware/switches.js';
import type { Action, BindingRow, Mode, SeatedPlayer, SeatsRow, Setting } from '../../language/model.js';
import type { Doer } from './doings.js';
import type { Where } from './holds.js';
import type { Offer } from './offers.js';
import type { Survey } from './survey.js';

interface Question {
  readonly console: ConsoleProfile;
  readonly where: Where;
  readonly survey: Survey;
}

/** Whose control it is to be: with `each`, one that every player has. */
type Hands = Doer | 'each';

/** A control that nothing in a mode uses, in as many of the seats rows as can be. */
export interface FreeControl {
  readonly mode: Mode;
  /** As `Control` is written: `left stick up`, `button`, `SELECT`. */
  readonly control: string;
  /** Why it is free: a sentence. */
  readonly why: string;
  /** The offers in which it is free. */
  readonly offers: readonly Offer[];
}

/**
 * How a setting could get its lost values after all; a sentence or two each.
 *
 * @param taken how many other settings are told before it to take a control there: each gets one of its own
 */
export function valueWay({
  setting,
  taken,
  ...question
}: Question & { setting: Setting; taken: number }): readonly string[] {
  const { setBy, name, startsAs } = setting;
  const free = freeForSetting(question, taken);
  if (setBy.kind === 'game') return [...gameWay(setting, free, question), ACCEPT];
  if (question.console.switches[setBy.name].kind !== 'fixed')
    return [
      `Give “${name}” only the values that the ${setBy.name} switch has, or let the game set it on every console.`,
    ];
  const row = `Add a row to \`## Fallbacks\`: without ${setBy.name}, for “${name}”`;
  return [
    free === null
      ? `${row}. ${noneFree(question)}`
      : `${row}, instead \`${free.mode.name}: ${free.control} press\`. ${free.why}`,
    `If the loss is intended, say so: without ${setBy.name}, for “${name}”, \`stays ${startsAs}\`.`,
  ];
}

const ACCEPT = 'If the loss is intended, say why in `## Accepted`.';

/** The row that sets it done in another way, or a new one. */
function gameWay(setting: Setting, free: FreeControl | null, question: Question): readonly string[] {
  for (const mode of question.survey.scheme.modes)
    for (const { action, effects } of mode.rows)
      if (effects.some(effect => effect.kind !== 'go to' && effect.setting === setting))
        if (needsOf(mode, action, question.console).length > 0)
          return actionWay({ ...question, mode, action, doer: 'anyone' });
  if (free === null) return [`Let a row that can be done there set “${setting.name}”.`];
  const { mode, control, why } = free;
  return [`Add a row to “${mode.name}”: \`${control}\`, \`press\`, then \`${setting.name}: next\`. ${why}`];
}

/**
 * How an action could be done instead, in the mode that lost it.
 *
 * @param doer who lost it; a fallback is for whoever does the row that it stands for
 */
export function actionWay({
  mode,
  action,
  doer,
  ...question
}: Question & { mode: Mode; action: Action; doer: Doer }): readonly string[] {
  const [need] = needsOf(mode, action, question.console);
  const free = freeIn(mode, question, need === undefined ? doer : handsOf(need.row));
  const subject = need === undefined ? null : `without ${need.name}, for “${action.name}”`;
  const settled = need === undefined ? settledWay(mode, action, question) : [];
  if (free === null && settled.length > 0) return settled;
  if (free === null)
    return [
      subject === null
        ? `Bind “${action.name}” to another control of “${mode.name}”. ${noneFree(question)}`
        : `Add a row to \`## Fallbacks\`: ${subject}. ${noneFree(question)}`,
    ];
  const gesture = isKept(mode, action) ? 'held' : 'press';
  return [
    ...settled,
    subject === null
      ? `Add a row to “${mode.name}” that does “${action.name}” whatever the settings: \`${free.control}\`, \`${gesture}\`. ${free.why}`
      : `Add a row to \`## Fallbacks\`: ${subject}, instead \`${mode.name}: ${free.control} ${gesture}\`. ${free.why}`,
  ];
}

/** Where no row of the action ever holds, because a setting that its `When` asks about never changes there. */
function settledWay(mode: Mode, action: Action, { console, survey }: Question): readonly string[] {
  for (const { action: done, conditions } of mode.rows) {
    if (done !== action) continue;
    for (const { setting, is, value } of conditions) {
      const source = settingSource(setting, survey.scheme, console);
      if (source.kind !== 'constant' || (source.value === value) === is) continue;
      return [
        `On ${console.name} “${setting.name}” is always “${source.value}”: take that out of the \`When\` of “${action.name}”, or let a fallback step “${setting.name}” there.`,
      ];
    }
  }
  return [];
}

const noneFree = ({ where }: Question): string =>
  `No control is free ${where.text} in a fitting mode: take one that is pressed only briefly, and a \`hold\` of it.`;

/** The action is done for as long as a switch is in a position. */
const isKept = (mode: Mode, action: Action): boolean =>
  mode.rows.some(row => row.action === action && row.gesture?.value.kind === 'at');

interface Need {
  readonly row: BindingRow;
  readonly name: SwitchName;
}

/** The switches of an action's rows that the console fixes or lacks. */
function needsOf(mode: Mode, action: Action, profile: ConsoleProfile): readonly Need[] {
  return mode.rows
    .filter(row => row.action === action)
    .flatMap(row => row.alternatives.flatMap(({ parts }) => parts.map(part => ({ row, part }))))
    .flatMap(({ row, part }) => (part.kind === 'switch' ? [{ row, name: part.name }] : []))
    .filter(({ name }) => ['fixed', 'absent'].includes(profile.switches[name].kind));
}

const handsOf = ({ who }: BindingRow): Hands =>
  who.value.kind === 'player' ? who.value.player : who.value.kind;

const FITTING = { menu: 0, pause: 1, play: 2 } as const;

/**
 * In as many of the seats rows as can be, and in a mode where games are chosen: a menu, the start mode, a pause, at
 * last a play mode.
 */
function freeForSetting(question: Question, taken: number): FreeControl | null {
  const { scheme } = question.survey;
  const offers = offersOf(question);
  const rank = (mode: Mode) => (mode === scheme.startMode ? 0.5 : FITTING[mode.kind]);
  const modes = scheme.modes
    .filter(mode => offers.some(({ recipes }) => recipes.has(mode)))
    .sort((a, b) => rank(a) - rank(b));
  let best: FreeControl | null = null;
  for (const mode of modes) {
    const free = freeIn(mode, question, 'anyone', taken);
    if (free !== null && free.offers.length > (best?.offers.length ?? 0)) best = free;
  }
  return best;
}

/** The facts of the finding's situations on the console. */
function offersOf({ console, where, survey }: Question) {
  return survey.facts.filter(
    ({ offer }) =>
      offer.console === console &&
      where.situations.some(
        ({ seats, standard }) =>
          offer.seats === seats && offer.situations.some(each => each.standard === standard),
      ),
  );
}

/** @param taken how many of the best are left for others */
function freeIn(mode: Mode, question: Question, hands: Hands, taken = 0): FreeControl | null {
  const offers = offersOf(question)
    .map(({ offer }) => offer)
    .filter(({ modes }) => modes.has(mode));
  const free = new Map<string, Place[]>();
  for (const offer of offers)
    for (const { name, contacts } of candidates(offer, hands)) {
      const places = free.get(name) ?? [];
      free.set(name, places);
      if (isFree(contacts, mode, offer)) places.push({ offer, contacts });
    }
  const ranked = [...free]
    .map(([name, places]) => ({ name, places }))
    .filter(({ places }) => places.length > 0)
    .sort((a, b) => b.places.length - a.places.length);
  const best = ranked[taken];
  if (best === undefined) return null;
  const own = best.places.map(({ offer }) => offer);
  const seats = own.length < offers.length ? ` in ${namesOf(own)}` : '';
  // The other player may well use the control of the same name.
  const [id = best.name, ...others] = new Set(
    best.places.flatMap(({ contacts }) => contacts.map(each => each.id)),
  );
  const uses = `uses ${others.length === 0 ? id : best.name} on ${question.console.name}${seats}`;
  const why = `It is free: no row of “${mode.name}” ${uses}.${elsewhere(best.places)}`;
  return { mode, control: best.name, why, offers: own };
}

/** Where a control is free, and which contacts that is there. */
interface Place {
  readonly offer: Offer;
  readonly contacts: readonly Contact[];
}

const namesOf = (offers: readonly Offer[]): string =>
  new Intl.ListFormat('en').format([...new Set(offers.map(({ seats }) => seats.name))]);

/** What it does in another mode (in its own it does nothing): so the reader sees that it is known and harmless. */
function elsewhere(places: readonly Place[]): string {
  for (const { offer, contacts } of places)
    for (const [mode, { bindings }] of offer.modes) {
      const use = bindings.find(({ parts }) => parts.some(({ id }) => contacts.some(each => each.id === id)));
      if (use !== undefined) return ` (In “${mode.name}” it does “${use.actionName}”.)`;
    }
  return '';
}

interface Candidate {
  /** As `Control` is written. */
  readonly name: string;
  /** One for each of the hands. */
  readonly contacts: readonly Contact[];
}

/** The best place for something extra first: SELECT, then the controllers, RESET last. */
function candidates({ seats, console }: Offer, hands: Hands): readonly Candidate[] {
  const panel = (name: MomentarySwitchName) =>
    hands === 'anyone' && console.switches[name].kind === 'front'
      ? [{ name, contacts: [switchContact(name)] }]
      : [];
  return [...panel('SELECT'), ...onControllers(seats, hands), ...panel('RESET')];
}

/** A control for anyone is named outright; a player's own is not. */
function onControllers({ players }: SeatsRow, hands: Hands): readonly Candidate[] {
  if (hands === 'anyone')
    return players.flatMap(momentaryOf).map(({ contact }) => ({ name: contact.id, contacts: [contact] }));
  const own = players.filter(({ name }) => hands === 'each' || name === hands).map(momentaryOf);
  const [first = []] = own;
  return first
    .map(({ name }) => ({
      name,
      contacts: own.flat().flatMap(each => (each.name === name ? [each.contact] : [])),
    }))
    .filter(({ contacts }) => contacts.length === own.length);
}

const momentaryOf = ({ port, letter, controller }: SeatedPlayer) =>
  controller.controls
    .filter(({ seat }) => seat === letter)
    .map(control => ({ name: control.name, contact: controlContact(port, controller, control) }))
    .filter(({ contact }) => contactType(contact) === 'momentary');

function isFree(contacts: readonly Contact[], mode: Mode, { modes }: Offer): boolean {
  const used = new Set(modes.get(mode)?.bindings.flatMap(({ parts }) => parts.map(({ id }) => id)));
  return contacts.every(({ id }) => !used.has(id));
}
