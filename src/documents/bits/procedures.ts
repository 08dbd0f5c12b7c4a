import { keypadSettling, paddleReach, wheelTurnsPerSecond } from '../../hardware/analog.js';
import { CYCLES_PER_LINE } from '../../hardware/clocks.js';
import type { Controller } from '../../hardware/controllers.js';
import { KEYPAD } from '../../hardware/keypad.js';
import { VBLANK_BITS } from '../../hardware/registers.js';
import { sourceText } from '../../hardware/source.js';
import { PADDLE, WHEEL } from '../../hardware/turning.js';
import type { Scheme } from '../../language/model.js';
import { byStandard, hexByte, millisecondsText, readEveryText, readPeriodMs } from './words.js';

/** How something that is more than a level is read. */
export interface Procedure {
  readonly title: string;
  readonly steps: readonly string[];
  readonly code: readonly CodeLine[];
  /** What the code costs; one sentence. */
  readonly cost: string;
  readonly facts: readonly ProcedureFact[];
  readonly cautions: readonly string[];
  readonly sources: readonly string[];
}

/** A line of a listing; the comment says the cycles. */
export interface CodeLine {
  readonly code: string;
  readonly comment: string;
}

/** A figure and its value, a line for each standard where they differ. */
export interface ProcedureFact {
  readonly name: string;
  readonly values: readonly string[];
}

/** The procedures that the scheme's controllers (and its button latch) need. */
export function viewProcedures(scheme: Scheme): readonly Procedure[] {
  const plugged = scheme.seats.flatMap(({ left, right }) => [left, right]);
  const has = (kind: 'pot' | 'matrix' | 'gray') => plugged.some(controller => hasWiring(controller, kind));
  return [
    ...(scheme.game.latch.value === 'off' ? [] : [latchProcedure(scheme, has('pot'))]),
    ...(has('pot') ? [paddleProcedure(scheme)] : []),
    ...(has('matrix') ? [keypadProcedure(scheme)] : []),
    ...(has('gray') ? [wheelProcedure(scheme)] : []),
  ];
}

function hasWiring(controller: Controller | null, kind: 'pot' | 'matrix' | 'gray'): boolean {
  return controller?.controls.some(({ wiring }) => wiring.kind === kind) ?? false;
}

function latchProcedure(scheme: Scheme, dumps: boolean): Procedure {
  const onUse = scheme.game.latch.value === 'cleared on use';
  const { blank, dump, latch } = VBLANK_BITS;
  const blanked = (d6: number) =>
    `#${hexByte(blank | d6)} while the picture is blanked${dumps ? `, #${hexByte(blank | dump | d6)} while the pots are dumped too` : ''}`;
  return {
    title: `Buttons: latch ${scheme.game.latch.value}`,
    steps: [
      'Keep VBLANK D6 at 1: from then on INPT4 and INPT5 D7 go to 0 at a press and stay 0 after the button is let go.',
      onUse
        ? 'When the game has used a press, write D6 0 and then 1 again. One bit clears both latches.'
        : 'After each read, write D6 0 and then 1 again: a press between two reads is then seen once. A button that is still down reads 0 again at once.',
      dumps
        ? 'D6, the picture’s D1 and the paddles’ D7 are in one register: write all three each time. A D7 of 0 in the midst of a dump begins the count too early.'
        : 'D6 and D1 are in one register: write the picture’s D1 with it each time.',
    ],
    code: [
      { code: 'LDA #$00', comment: `2 cycles; ${blanked(0)}` },
      { code: 'STA VBLANK', comment: '3: both latches are clear' },
      { code: `LDA #${hexByte(latch)}`, comment: `2; ${blanked(latch)}` },
      { code: 'STA VBLANK', comment: '3: latching again' },
    ],
    cost: '10 cycles, 8 bytes.',
    facts: [],
    cautions: [],
    sources: [sourceText({ key: 'G', section: 'TIA 12.2' })],
  };
}

function paddleProcedure(scheme: Scheme): Procedure {
  const every = scheme.game.readEvery.value;
  return {
    title: 'Paddles',
    steps: [
      'Dump: write 1 to VBLANK D7 during the vertical blank. INPT0 to INPT3 are pulled to ground and their capacitors empty.',
      'Let go: write 0 to VBLANK D7, with the count at 0. The capacitors charge, the slower the further the knob is turned.',
      'Once a scan line, run the counting test below for each paddle, with Y counting the lines. While D7 of its INPT reads 0 the count is stored again; when it reads 1 the last count stays.',
      'At the read, compare the count with that of the read before: turn fires when they differ. A count that flickers by one at rest is usual; leave a margin.',
    ],
    code: [
      { code: 'BIT INPT0', comment: '3 cycles: D7 to N' },
      { code: 'BMI charged', comment: '2, taken 3: 1 means charged' },
      { code: 'STY count_LA', comment: '3: lines so far' },
    ],
    cost: `A line and paddle: 8 cycles while it charges, 6 afterwards; 6 bytes. Four paddles take at most 32 of the ${CYCLES_PER_LINE} cycles of a line.`,
    facts: [
      {
        name: 'From one end of the knob to the other',
        values: [`about ${PADDLE.linesAtFarEnd} scan lines, ${PADDLE.degrees}° of turn`],
      },
      {
        name: `Lines in a read (${readEveryText(every)})`,
        values: byStandard(scheme, standard => `${paddleReach(standard, every).lines}`),
      },
      {
        name: 'Part of the turn that is seen',
        values: byStandard(scheme, standard => reachText(paddleReach(standard, every))),
      },
    ],
    cautions: [
      ...farEndCaution(scheme, every),
      'A byte counts to 255: count every second line (or stop at 255) where more lines than that are counted.',
    ],
    sources: PADDLE.sources.map(sourceText),
  };
}

const reachText = ({ part, degrees }: { readonly part: number; readonly degrees: number }): string =>
  part === 1 ? 'all of it' : `at most ${Math.floor(part * 100)} %, ${Math.floor(degrees)}°`;

function farEndCaution(scheme: Scheme, every: number): readonly string[] {
  const short = scheme.standards.filter(standard => paddleReach(standard, every).part < 1);
  if (short.length === 0) return [];
  const names = short.map(({ name }) => name).join(', ');
  return [
    `The far end of the knob is not seen on ${names}: the line is dumped again before the pot has charged. Treat “not charged” as the far end, and lay out the game for the part that is seen.`,
  ];
}

function keypadProcedure(scheme: Scheme): Procedure {
  const every = scheme.game.readEvery.value;
  return {
    title: 'Keypads',
    steps: [
      'Keep VBLANK D7 at 0: the first two columns are INPT0 and INPT1 (INPT2 and INPT3 on the right), which D7 would pull to ground.',
      'Write 0 to the output bits of SWCHA once. A row is driven low when its pin is an output, and left alone when it is an input.',
      'For each row: write its bit to SWACNT, wait, read the three columns. 0 is a pressed key. Never drive two rows of one keypad at once.',
      'A row may be driven at the end of one stretch of work and its columns read at the beginning of the next, so the wait costs nothing.',
      'After the last row write $00 to SWACNT.',
    ],
    code: [
      { code: 'LDA #$10', comment: '2 cycles: row 1 of the left keypad (#$01: of the right)' },
      { code: 'STA SWACNT', comment: '4: its pin is an output, driven low' },
      { code: '; wait', comment: 'see below' },
      { code: 'BIT INPT0', comment: '3: column 1' },
      { code: 'BMI skip', comment: '2, taken 3: 1 means not pressed' },
    ],
    cost: 'Driving a row: 6 cycles, 5 bytes. A column: 5 cycles pressed, 6 not pressed; 4 bytes.',
    facts: [
      { name: 'Rows', values: ['left SWCHA D4, D5, D6, D7; right SWCHA D0, D1, D2, D3'] },
      { name: 'Columns', values: ['left INPT0, INPT1, INPT4; right INPT2, INPT3, INPT5; D7 of each'] },
      {
        name: `Wait of ${KEYPAD.settleMicroseconds} µs (figure from memory)`,
        values: byStandard(scheme, standard => waitText(keypadSettling(standard))),
      },
      {
        name: 'Four rows one after the other',
        values: byStandard(
          scheme,
          standard =>
            `${4 * keypadSettling(standard).lines} of the ${standard.linesPerFrame * every} scan lines of a read`,
        ),
      },
    ],
    cautions: [
      'The keys have no diodes: three keys down on three corners of a rectangle of rows and columns read as the fourth as well.',
      'Two keys of one column connect their rows. A pin driven high there would work against the one driven low, so the other rows stay inputs.',
    ],
    sources: KEYPAD.sources.map(sourceText),
  };
}

const waitText = ({ cycles, lines }: { readonly cycles: number; readonly lines: number }): string =>
  `${cycles} CPU cycles, ${lines} scan lines`;

function wheelProcedure(scheme: Scheme): Procedure {
  const every = scheme.game.readEvery.value;
  const cycle = [...WHEEL.clockwise, WHEEL.clockwise[0]].join(' → ');
  return {
    title: 'Wheels',
    steps: [
      'Read SWCHA and keep the two code bits: left port D5 and D4, right port D1 and D0.',
      `Turning clockwise the code goes ${cycle}; the other way round, backwards.`,
      'If the code is that of the read before, the wheel has not moved. If it is the next of the circle it moved one step clockwise; if the one before, one step back.',
      'If it is the one opposite, two steps were made between two reads and the direction is lost: keep the direction of the step before, or drop it.',
    ],
    code: [
      { code: 'LDA SWCHA', comment: '4 cycles' },
      { code: 'AND #$30', comment: '2: left wheel (#$03: right)' },
      { code: 'CMP was_L', comment: '3' },
      { code: 'BEQ skip', comment: '2, taken 3: not moved' },
    ],
    cost: '11 cycles moved, 12 not moved; 9 bytes.',
    facts: [
      { name: 'Steps in a turn', values: [String(WHEEL.stepsPerTurn)] },
      {
        name: `Time from read to read (${readEveryText(every)})`,
        values: byStandard(scheme, standard => millisecondsText(readPeriodMs(standard, every))),
      },
      {
        name: 'Can be followed up to',
        values: byStandard(
          scheme,
          standard => `${wheelTurnsPerSecond(standard, every).toFixed(2)} turns a second`,
        ),
      },
    ],
    cautions: ['Faster than that steps are lost, and then the direction.'],
    sources: WHEEL.sources.map(sourceText),
  };
}
