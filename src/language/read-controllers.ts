import type { Place } from '../findings/place.js';
import type { Report } from '../findings/report.js';
import { CONTROLLERS, createOwnController } from '../hardware/controllers.js';
import { PORT_LINE_NAMES, type PortLine } from '../hardware/ports.js';
import { type ControlWords, createControlWords } from './control-words.js';
import { badValue, createSpot, duplicateName, notOneOf, type Spot } from './faults.js';
import type { OwnController } from './model.js';
import { readName, readPlainName } from './naming.js';
import { findSwitch } from './positions.js';
import type { Section } from './sections.js';
import { normal } from './spelling.js';
import { needCell, type Row, readTable } from './tables.js';
import { placeOf, type Words } from './words.js';

interface OwnControl {
  readonly name: string;
  readonly line: PortLine;
  readonly at: Place;
}

interface Gathered {
  readonly name: string;
  readonly at: Place;
  readonly controls: OwnControl[];
  readonly unclear: string[];
}

export interface OwnControllers {
  /** In the order of the scheme. */
  readonly controllers: readonly OwnController[];
  /** Names of controls whose line could not be read. */
  readonly unclear: readonly string[];
}

/** Names that no own controller can take. */
const TAKEN = [...CONTROLLERS.map(({ name }) => name), 'empty'];

/** The scheme's own controllers, in order: a row of the table for each control. */
export function readControllers(section: Section | undefined, report: Report): OwnControllers {
  if (section === undefined) return { controllers: [], unclear: [] };
  const gathered = new Map<string, Gathered>();
  for (const row of readTable(section, createSpot(report, '')).rows) readRow(row, gathered, report);
  const all = [...gathered.values()];
  return {
    controllers: all.map(({ name, at, controls }) => ({
      controller: createOwnController(name, controls),
      at,
      controlsAt: new Map(controls.map(control => [control.name, control.at])),
    })),
    unclear: all.flatMap(({ unclear }) => unclear),
  };
}

function readRow(row: Row, gathered: Map<string, Gathered>, report: Report): void {
  const plain = createSpot(report, '');
  const words = needCell(row, 'Controller', plain, 'Write the controller’s name in each of its rows.');
  if (words === null) return;
  const controller = findController(words, gathered, plain);
  const spot = createSpot(report, ` of “${controller.name}”`);
  const control = needCell(row, 'Control', spot, 'Write the name of the control.');
  const lineWords = needCell(row, 'Line', spot, 'Write the line of the port that the control is on.');
  if (control === null || lineWords === null) return;
  const name = readControlName(control, spot);
  const line = PORT_LINE_NAMES.find(candidate => normal(candidate) === normal(lineWords.text));
  if (line === undefined) {
    notOneOf(createSpot(report, ` of “${name}”`), lineWords, 'Line', PORT_LINE_NAMES);
    controller.unclear.push(name);
    return;
  }
  const first = controller.controls.find(other => normal(other.name) === normal(name));
  if (first === undefined) controller.controls.push({ name, line, at: placeOf(control) });
  else duplicateName(spot, control, `controls of “${controller.name}”`, first.at);
}

function findController(words: Words, gathered: Map<string, Gathered>, spot: Spot): Gathered {
  const key = normal(words.text);
  const before = gathered.get(key);
  if (before !== undefined) return before;
  const name = readName(words, 'Controller', spot);
  if (TAKEN.includes(key)) duplicateName(spot, words, 'controllers', null);
  const made: Gathered = { name, at: placeOf(words), controls: [], unclear: [] };
  gathered.set(key, made);
  return made;
}

function readControlName(words: Words, spot: Spot): string {
  const name = readPlainName(words, 'Control', spot);
  if (findSwitch(name) !== undefined)
    badValue(spot, words, 'Control', `“${name}” is the name of a console switch`, ['Choose another name.']);
  return name;
}

export function controlWordsOf({ controllers, unclear }: OwnControllers): ControlWords {
  return createControlWords(
    controllers.map(({ controller }) => controller),
    unclear,
  );
}
