import type { ConsoleProfile } from '../../hardware/consoles.js';
import type { SwitchName } from '../../hardware/switches.js';
import type { Mode, Scheme } from '../../language/model.js';
import { textWidth } from '../figures/text-block.js';
import type { SwitchCall } from '../manual/console.js';
import { rowsOn } from '../manual/console.js';
import { type Speech, shortGesture } from '../wording/gestures.js';
import { panelWords } from '../wording/machine.js';
import { SMALLEST_PT } from './fit-label.js';
import { drawTable, fitTable } from './fit-table.js';
import type { Piece } from './piece.js';
import { isFromMemory, sizesOf } from './sizes.js';

/** The order of a panel from left to right. */
const ORDER: readonly SwitchName[] = ['TV type', 'left difficulty', 'right difficulty', 'SELECT', 'RESET'];
const MARGIN = 2;
/** Of the empty column that is folded, mm. */
const FOLD_WIDTH = 5;

/**
 * The strips for a panel: a column for each used switch that it has, a row for each mode in which one does
 * something. What is at the back of the console stands to the right of a fold.
 */
export function stripPieces(
  profile: ConsoleProfile,
  calls: readonly SwitchCall[],
  scheme: Scheme,
  speech: Speech,
): readonly Piece[] {
  const { phrases } = speech;
  const [front, rear] = [switchesAt('front', profile, calls), switchesAt('rear', profile, calls)];
  if (front.length + rear.length === 0) return [];
  const hasFold = front.length > 0 && rear.length > 0;
  // The fold runs through a column of its own, which stays empty.
  const shown = hasFold ? [...front, null, ...rear] : [...front, ...rear];
  const sizes = sizesOf(scheme);
  const { 'Strip width': width, 'Strip height': height } = sizes;
  const panel = panelWords(profile.name, phrases);
  const rows = stripRows(shown, scheme, speech);
  const head = [scheme.title.value, ...shown.map(call => call?.label ?? '')];
  const columns = columnsFor([head, ...rows], shown, width);
  const { sizePt, pieces } = fitTable(head, rows, { columns, height: height - 2 * MARGIN + 0.8 });
  const fold = MARGIN + sum(columns.slice(0, 1 + front.length)) + FOLD_WIDTH / 2 - 0.8;
  return pieces.map(set => ({
    kind: 'strip' as const,
    width,
    height,
    radius: Math.min(sizes['Corner radius'], height / 2),
    nodes: drawTable(set, sizePt, { x: MARGIN + 1, y: MARGIN - 0.2 }, columns),
    text: phrases.say('strip text', {
      panel,
      switches: rows.map(row => row.filter(Boolean).join(', ')).join('; '),
    }),
    under: [panel],
    isFromMemory: isFromMemory(scheme, 'strip'),
    folds: hasFold ? [fold] : [],
    signs: [],
  }));
}

function switchesAt(
  kind: 'front' | 'rear',
  { switches }: ConsoleProfile,
  calls: readonly SwitchCall[],
): readonly SwitchCall[] {
  return ORDER.flatMap(name => calls.find(call => call.name === name && switches[name].kind === kind) ?? []);
}

/**
 * The consoles that get a strip of their own: one whose front has the same switches as another's, and less at
 * the back, uses the other's.
 */
export function stripConsoles(
  consoles: readonly ConsoleProfile[],
  calls: readonly SwitchCall[],
): readonly ConsoleProfile[] {
  const names = (profile: ConsoleProfile, kind: 'front' | 'rear') =>
    switchesAt(kind, profile, calls).map(({ name }) => name);
  return consoles.filter(profile =>
    consoles.every(
      other =>
        names(other, 'front').join() !== names(profile, 'front').join() ||
        names(other, 'rear').length <= names(profile, 'rear').length,
    ),
  );
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Columns as wide as their longest text at the smallest size, what is left shared out; narrower where need be. */
function columnsFor(
  table: readonly (readonly string[])[],
  shown: readonly (SwitchCall | null)[],
  width: number,
): readonly number[] {
  const inner = width - 2 * MARGIN - 2;
  const isFold = (index: number) => index > 0 && shown[index - 1] === null;
  const wanted = Array.from({ length: shown.length + 1 }, (_, index) =>
    isFold(index) ? FOLD_WIDTH : longest(table.map(row => row[index] ?? '')) + 2,
  );
  const folds = FOLD_WIDTH * wanted.filter((_, index) => isFold(index)).length;
  const texts = sum(wanted) - folds;
  const extra = (inner - folds - texts) / (wanted.length - (folds > 0 ? 1 : 0));
  const scale = (inner - folds) / texts;
  return wanted.map((own, index) => (isFold(index) ? own : extra >= 0 ? own + extra : own * scale));
}

/** mm; a very long text is broken in any case. */
const longest = (texts: readonly string[]): number =>
  Math.max(12, ...texts.map(text => Math.min(46, textWidth(text, { sizePt: SMALLEST_PT, bold: true }))));

function stripRows(
  shown: readonly (SwitchCall | null)[],
  scheme: Scheme,
  speech: Speech,
): readonly (readonly string[])[] {
  const settings = ['', ...shown.map(call => (call === null ? '' : settingWords(call.name, scheme, speech)))];
  const modes = scheme.modes.map(mode => [
    mode.name,
    ...shown.map(call => (call === null ? '' : modeWords(call.name, mode, scheme, speech))),
  ]);
  return [settings, ...modes].filter(([, ...cells]) => cells.some(cell => cell !== ''));
}

/** `A: strong, B: gentle`; where no setting hangs on the switch, what the scheme says of its positions. */
function settingWords(name: SwitchName, scheme: Scheme, { phrases }: Speech): string {
  const values = scheme.settings.flatMap(({ setBy }) =>
    setBy.kind === 'switch' && setBy.name === name
      ? [...setBy.values].map(([position, value]) => phrases.say('switch value', { position, value }))
      : [],
  );
  if (values.length > 0) return values.join(', ');
  const isBound = rowsOn(name, scheme).length > 0;
  const said = scheme.switchWords.filter(words => words.name === name && words.words !== '');
  if (isBound) return '';
  return said
    .map(({ position, words }) =>
      position === null ? words : phrases.say('switch position', { position, words }),
    )
    .join(', ');
}

function modeWords(name: SwitchName, mode: Mode, scheme: Scheme, speech: Speech): string {
  const said = rowsOn(name, scheme)
    .filter(row => row.mode === mode)
    .map(({ action, gesture }) => {
      const isPlain = gesture === null || gesture.value.kind === 'press' || gesture.value.kind === 'repeat';
      return isPlain
        ? action.name
        : speech.phrases.say('sentence with note', {
            sentence: action.name,
            note: shortGesture(gesture.value, speech),
          });
    });
  return [...new Set(said)].join(', ');
}
