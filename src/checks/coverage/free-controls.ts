import { type Contact, contactType, controlContact, switchContact } from '../../gestures/contacts.js';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { SwitchName } from '../../hardware/switches.js';
import type { Action, Mode, SeatedPlayer, SeatsRow, Setting } from '../../language/model.js';
import type { Doer } from './doings.js';
import type { Where } from './holds.js';
import type { Offer } from './offers.js';
import type { Survey } from './survey.js';

interface Question {
  readonly console: ConsoleProfile;
  readonly where: Where;
  readonly survey: Survey;
}

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

/** How a setting could get its lost values after all; a sentence or two each. */
export function valueWay({ setting, ...question }: Question & { setting: Setting }): readonly string[] {
  const { setBy, name, startsAs } = setting;
  const free = freeForSetting(question);
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
        if (missingSwitches(mode, action, question.console).length > 0)
          return actionWay({ ...question, mode, action, doer: 'anyone' });
  if (free === null) return [`Let a row that can be done there set “${setting.name}”.`];
  const { mode, control, why } = free;
  return [`Add a row to “${mode.name}”: \`${control}\`, \`press\`, then \`${setting.name}: next\`. ${why}`];
}

/** How an action could be done instead, in the mode that lost it. */
export function actionWay({
  mode,
  action,
  doer,
  ...question
}: Question & { mode: Mode; action: Action; doer: Doer }): readonly string[] {
  const free = freeIn(mode, question, doer);
  const switches = new Set(missingSwitches(mode, action, question.console));
  const [name] = switches;
  const subject = name === undefined ? null : `without ${name}, for “${action.name}”`;
  if (free === null)
    return [
      subject === null
        ? `Bind “${action.name}” to another control of “${mode.name}”. ${noneFree(question)}`
        : `Add a row to \`## Fallbacks\`: ${subject}. ${noneFree(question)}`,
    ];
  const gesture = isKept(mode, action) ? 'held' : 'press';
  return [
    subject === null
      ? `Add a row to “${mode.name}” that does “${action.name}” whatever the settings: \`${free.control}\`, \`${gesture}\`. ${free.why}`
      : `Add a row to \`## Fallbacks\`: ${subject}, instead \`${mode.name}: ${free.control} ${gesture}\`. ${free.why}`,
  ];
}

const noneFree = ({ where }: Question): string =>
  `No control is free ${where.text} in a fitting mode: take one that is pressed only briefly, and a \`hold\` of it.`;

/** The action is done for as long as a switch is in a position. */
const isKept = (mode: Mode, action: Action): boolean =>
  mode.rows.some(row => row.action === action && row.gesture?.value.kind === 'at');

/** The switches of an action's rows that the console fixes or lacks. */
function missingSwitches(mode: Mode, action: Action, profile: ConsoleProfile): readonly SwitchName[] {
  return mode.rows
    .filter(row => row.action === action)
    .flatMap(row => row.alternatives.flatMap(({ parts }) => parts))
    .flatMap(part => (part.kind === 'switch' ? [part.name] : []))
    .filter(name => ['fixed', 'absent'].includes(profile.switches[name].kind));
}

const FITTING = { menu: 0, pause: 1, play: 2 } as const;

/** In a mode where games are chosen: a menu, the start mode, a pause, at last a play mode. */
function freeForSetting(question: Question): FreeControl | null {
  const { scheme } = question.survey;
  const offers = offersOf(question);
  const rank = (mode: Mode) => (mode === scheme.startMode ? 0.5 : FITTING[mode.kind]);
  const modes = scheme.modes
    .filter(mode => offers.some(({ recipes }) => recipes.has(mode)))
    .sort((a, b) => rank(a) - rank(b));
  for (const mode of modes) {
    const free = freeIn(mode, question, 'anyone');
    if (free !== null) return free;
  }
  return null;
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

function freeIn(mode: Mode, question: Question, doer: Doer): FreeControl | null {
  const offers = offersOf(question)
    .map(({ offer }) => offer)
    .filter(({ modes }) => modes.has(mode));
  let best: { readonly name: string; readonly offers: readonly Offer[] } | null = null;
  for (const name of new Set(offers.flatMap(({ seats, console }) => candidates(seats, console, doer)))) {
    const free = offers.filter(offer => isFree(name, mode, offer, doer));
    if (free.length > (best?.offers.length ?? 0)) best = { name, offers: free };
  }
  if (best === null) return null;
  const seats = best.offers.length < offers.length ? ` in ${namesOf(best.offers)}` : '';
  const why = `It is free: no row of “${mode.name}” uses ${best.name} on ${question.console.name}${seats}.${elsewhere(best.name, mode, best.offers, doer)}`;
  return { mode, control: best.name, why, offers: best.offers };
}

const namesOf = (offers: readonly Offer[]): string =>
  new Intl.ListFormat('en').format([...new Set(offers.map(({ seats }) => seats.name))]);

/** What the control does in another mode, so that the reader sees that it is known and harmless. */
function elsewhere(name: string, mode: Mode, offers: readonly Offer[], doer: Doer): string {
  for (const offer of offers) {
    const contacts = contactsOf(name, offer.seats, offer.console, doer);
    for (const [other, { bindings }] of offer.modes) {
      if (other === mode) continue;
      const use = bindings.find(({ parts }) => parts.some(({ id }) => contacts.some(each => each.id === id)));
      if (use !== undefined) return ` (In “${other.name}” it does “${use.actionName}”.)`;
    }
  }
  return '';
}

/** Controls by name, the best place for something extra first: SELECT, then the controllers, RESET last. */
function candidates(seats: SeatsRow, console: ConsoleProfile, doer: Doer): readonly string[] {
  const names = seats.players
    .filter(({ name }) => doer === 'anyone' || name === doer)
    .flatMap(player => momentaryOf(player).map(name => nameFor(player, name, doer)));
  const panel = (name: SwitchName) =>
    doer === 'anyone' && console.switches[name].kind === 'front' ? [name] : [];
  return [...panel('SELECT'), ...names, ...panel('RESET')];
}

/** A control for anyone is named outright; a player's own is not. */
function nameFor({ name }: SeatedPlayer, control: string, doer: Doer): string {
  return doer === 'anyone' ? `${name} ${control}` : control;
}

const momentaryOf = (player: SeatedPlayer): readonly string[] =>
  ownContacts(player)
    .filter(contact => contactType(contact) === 'momentary')
    .flatMap(contact => (contact.kind === 'control' ? [contact.control.name] : []));

const ownContacts = ({ port, letter, controller }: SeatedPlayer): readonly Contact[] =>
  controller.controls
    .filter(control => control.seat === letter)
    .map(control => controlContact(port, controller, control));

function contactsOf(
  name: string,
  { players }: SeatsRow,
  console: ConsoleProfile,
  doer: Doer,
): readonly Contact[] {
  if (name === 'SELECT' || name === 'RESET')
    return console.switches[name].kind === 'front' ? [switchContact(name)] : [];
  return players
    .filter(player => doer === 'anyone' || player.name === doer)
    .flatMap(player =>
      ownContacts(player).filter(
        contact => contact.kind === 'control' && nameFor(player, contact.control.name, doer) === name,
      ),
    );
}

function isFree(name: string, mode: Mode, { seats, console, modes }: Offer, doer: Doer): boolean {
  const contacts = contactsOf(name, seats, console, doer);
  const used = new Set(modes.get(mode)?.bindings.flatMap(({ parts }) => parts.map(({ id }) => id)));
  return contacts.length > 0 && contacts.every(({ id }) => !used.has(id));
}
