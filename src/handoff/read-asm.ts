import { PADDLE, WHEEL } from '../hardware/turning.js';
import type { Scheme, SeatsRow } from '../language/model.js';
import { comments, equate, linesOf } from './assembly.js';
import { usesWheel, WHEEL_TABLE_BYTES } from './layout.js';
import type { Handoff, PlacedPiece, UnitCost } from './model.js';
import type { PlacedCell } from './ram.js';
import { hex } from './routine/code.js';
import { countings } from './times.js';

/** `read.asm`: ca65 source of the reading routine. */
export function writeReadAsm(handoff: Handoff): string {
  const { costs } = handoff;
  const lines = [
    ...headLines(handoff),
    '',
    ...costLines(costs.flatMap(({ units }) => units)),
    '',
    ...symbolLines(handoff),
    '',
    ...(hasPaddles(handoff) ? [...paddleMacro(handoff), ''] : []),
    `.ifndef ${handoff.names.prefix}ANYWHERE`,
    '        .align 256                              ; the cycles below are counted from a page boundary',
    '.endif',
    '',
    ...(usesWheel(handoff) ? [...wheelTable(handoff), ''] : []),
    ...handoff.scheme.modes.flatMap(mode =>
      mode.seats.flatMap(seats => unitLines(handoff, costs, mode.name, seats)),
    ),
  ];
  return `${lines.join('\n').trimEnd()}\n`;
}

function headLines(handoff: Handoff): readonly string[] {
  const { scheme, names, ram, classes } = handoff;
  const p = names.prefix;
  return [
    ...comments(
      `${scheme.title.value}: reading the inputs. Source for ca65; made from the scheme, so change the scheme, or copy this file before you change it.`,
    ),
    ';',
    ...comments(
      `Once a read (every ${scheme.game.readEvery.value === 1 ? 'frame' : `${scheme.game.readEvery.value} frames`}), while the picture is blanked: JSR ${p}READ_mode, then look at the bits of ${p}FIRED0 and on (AND #symbol of an action, the byte is its __BYTE). Y is kept; A, X and the flags are not.`,
      `Once at power-on: JSR ${p}START_mode with the controllers at rest.${positionsHelp(handoff)}`,
      `When a "go to" has fired, or the game changes the mode by itself: JSR ${p}ENTER_mode of the new mode, in the same frame, right after the read. It holds back what is still engaged until it is let go.`,
      `The game does what a fired action's Then says; where it changes a setting listed below, it writes the new value's number. The routine only reads them.`,
      `${p}RAM is the first of ${ram.size} bytes in zero page ($80 if you define nothing). ${timesHelp(scheme, p)}`,
    ),
    ...(classes.length > 1
      ? comments(
          `${p}CONSOLE chooses the consoles this build is for: ${classes
            .map(({ number, profiles }) => `${number} for ${profiles.map(({ name }) => name).join(', ')}`)
            .join('; ')}.`,
        )
      : []),
    ...comments(
      `The code begins on a page boundary (.align 256), so the linker's configuration must give its segment align = $100. If you define ${p}ANYWHERE it does not; a read may then take a cycle more for each branch that crosses a page.`,
    ),
    ...scanHelp(p, scheme.seats),
  ];
}

function timesHelp(scheme: Scheme, prefix: string): string {
  const [only, ...more] = countings(scheme);
  if (more.length > 0) return `${prefix}PAL = 1 counts times for PAL and SECAM, 0 for NTSC.`;
  return `Times are counted for ${only === 'NTSC' ? 'NTSC' : 'PAL and SECAM'} only, as the scheme lists nothing else.`;
}

/** What turns has a position before the first read: without one, its `turn` would happen there. */
function positionsHelp({ routines, ram }: Handoff): string {
  if (!routines.some(({ plan }) => plan.happenings.some(({ source }) => source.kind !== 'signal'))) return '';
  const symbols = ram.shared.filter(({ kind }) => kind === 'position').map(({ symbol }) => symbol);
  const [it, holds] = symbols.length === 1 ? ['it', 'holds'] : ['they', 'hold'];
  return ` Before it, write what ${it} ${holds} to ${symbols.join(', ')}: a paddle's position as measured, for a wheel the number to count from.`;
}

function scanHelp(prefix: string, seats: readonly SeatsRow[]): readonly string[] {
  const hasKeypad = seats.some(row =>
    [row.left, row.right].some(controller => controller?.name === 'keypad'),
  );
  if (!hasKeypad) return [];
  return comments(
    `Keypads: before each read call ${prefix}SCAN1_mode, wait at least 400 us (7 lines), call SCAN2, wait, and so on; after the last wait the READ itself. VBLANK D7 must be 0 all the while.`,
  );
}

function costLines(costs: readonly UnitCost[]): readonly string[] {
  const byTag = new Map<string, UnitCost[]>();
  for (const cost of costs) byTag.set(cost.routine.tag, [...(byTag.get(cost.routine.tag) ?? []), cost]);
  const rows = [...byTag].map(([tag, list]) => {
    const most = (of: (cost: UnitCost) => number) => String(Math.max(...list.map(of)));
    const more = most(({ read, scan }) =>
      [read, ...scan].reduce((sum, { moreElsewhere }) => sum + moreElsewhere, 0),
    );
    return [
      tag,
      most(({ cycles }) => cycles),
      more,
      most(({ romBytes }) => romBytes),
      most(({ ramBytes }) => ramBytes),
    ];
  });
  const head = ['mode', 'cycles a read', 'elsewhere +', 'bytes ROM', 'bytes RAM'];
  const widths = head.map((word, column) =>
    Math.max(word.length, ...rows.map(row => (row[column] ?? '').length)),
  );
  const text = (row: readonly string[]) =>
    `;   ${row.map((cell, column) => (column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0))).join('  ')}`;
  return [
    ...comments('Worst case of each mode; cycles include JSR and RTS and are never exceeded:'),
    text(head).trimEnd(),
    ...rows.map(text),
  ];
}

function symbolLines(handoff: Handoff): readonly string[] {
  const { names, times, ram, scheme } = handoff;
  const p = names.prefix;
  const ways = countings(scheme);
  const readsOf = (symbol: string) =>
    ways.length === 1 ? `${symbol}__${ways[0]}` : `${symbol}__NTSC*(1-${p}PAL)+${symbol}__PAL*${p}PAL`;
  const optional = (name: string, text: string) => [`.ifndef ${name}`, equate(name, text), '.endif'];
  return [
    '.include "controls.inc"',
    '',
    ...(ways.length === 1 ? [] : optional(`${p}PAL`, '0')),
    ...optional(`${p}CONSOLE`, '0'),
    ...optional(`${p}RAM`, '$80'),
    '',
    ...ram.shared.map(({ symbol, holds }) => equate(symbol, `${p}RAM+${symbol}__AT`, holds)),
    ...(times.all().length > 0 ? [''] : []),
    ...times.all().map(({ symbol, text }) => equate(symbol, readsOf(symbol), `${text}, in reads`)),
  ];
}

function unitLines(
  handoff: Handoff,
  costs: Handoff['costs'],
  mode: string,
  seats: SeatsRow,
): readonly string[] {
  const texts = costs.flatMap(({ consoles, units }) => {
    const cost = units.find(({ routine: { unit } }) => unit.mode.name === mode && unit.seats === seats);
    return cost === undefined ? [] : [{ consoles, cost, text: codeLines(handoff, cost).join('\n') }];
  });
  const groups = new Map<string, typeof texts>();
  for (const each of texts) groups.set(each.text, [...(groups.get(each.text) ?? []), each]);
  const title = comments(`${'='.repeat(20)} ${mode}, ${seats.name}`);
  if (groups.size === 1) return [...title, ...[...groups.keys()], ''];
  const blocks = [...groups].flatMap(([text, list]) => {
    const { prefix } = handoff.names;
    const test = list.map(({ consoles }) => `(${prefix}CONSOLE = ${consoles.number})`).join(' || ');
    return [`.if ${test}`, text, '.endif'];
  });
  return [...title, ...blocks, ''];
}

function codeLines({ ram, names }: Handoff, cost: UnitCost): readonly string[] {
  const { routine, code } = cost;
  const left = routine.unit.tooLong.map(
    ({ actionName, parts }) =>
      `not read here, longer than a byte can count: ${actionName} on ${parts.map(({ id }) => id).join(' + ')}`,
  );
  if (code !== routine) return comments(`reads as ${code.tag} does: the same code`, ...left);
  const own = ram.own.get(routine) ?? [];
  return [
    ...comments(...left),
    ...own.map(cell => ownEquate(names.prefix, cell)),
    ...[...cost.scan, cost.read, cost.enter, ...(cost.start === null ? [] : [cost.start])].flatMap(
      pieceLines,
    ),
  ];
}

function ownEquate(prefix: string, { symbol, offset, holds, kind }: PlacedCell): string {
  return equate(
    symbol,
    `${prefix}RAM+${hex(offset)}`,
    kind === 'scratch' ? `(free between reads) ${holds}` : holds,
  );
}

function pieceLines({ piece, aliases }: PlacedPiece): readonly string[] {
  return ['', ...aliases.map(alias => `${alias}:`), `${piece.label}:`, ...linesOf(piece.items)];
}

/** Old code and new code of a wheel to 0, 1 (clockwise) or −1; codes as the banks hold them, inverted. */
function wheelTable({ names }: Handoff): readonly string[] {
  const place = (code: number) => WHEEL.clockwise.findIndex(each => each === (code ^ 3));
  const steps = Array.from({ length: WHEEL_TABLE_BYTES }, (_, index) => {
    const moved = (place(index & 3) - place(index >> 2) + 4) % 4;
    return moved === 1 ? 1 : moved === 3 ? 0xff : 0;
  });
  return [
    ...comments(
      'steps of a wheel, by its old code times 4 plus its new one: 0, 1 or -1; two at once are not seen',
    ),
    `${names.prefix}WHEEL_STEPS:`,
    `        .byte ${steps.map(hex).join(',')}`,
  ];
}

export function hasPaddles({ routines }: Handoff): boolean {
  return routines.some(({ plan }) => plan.happenings.some(({ source }) => source.kind === 'paddle'));
}

/** BIT zero page 3, BMI 2, INC zero page 5. */
const PADDLE_CYCLES = 10;

function paddleMacro({ names }: Handoff): readonly string[] {
  const p = names.prefix;
  return [
    ...comments(
      `Paddles: dump the pots (VBLANK D7 = 1), let go (D7 = 0) and set the position to 0; then this once a scan line: it counts lines until the pot has charged. At most ${PADDLE_CYCLES} cycles of the line's 76, 6 bytes. A knob takes 0 to about ${PADDLE.linesAtFarEnd} lines; a byte holds 255 of them, and a frame has fewer than 380: stop counting before it wraps.`,
    ),
    `.macro ${p}COUNT_PADDLE inpt, position`,
    '        .local charged',
    '        bit inpt                                ; D7 to N: 1 when charged',
    '        bmi charged',
    '        inc position',
    'charged:',
    '.endmacro',
  ];
}
