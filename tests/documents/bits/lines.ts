/**
 * Where each control is read, written down a second time from the sources and not from the program's tables.
 *
 * Programmer's guide to the console's TIA and PIA, 3 December 1979: SWCHA PIA 5.3 (joysticks) and 5.4 (paddle
 * buttons), SWCHB PIA 4.1, pot lines TIA 12.1, buttons TIA 12.2, keypad PIA 5.5. Keypad lines and the polarity of
 * the buttons: common practice, no source. Wheel: from memory.
 */
export interface Line {
  readonly address: number;
  readonly bit: number;
  /** What it reads when engaged. */
  readonly engaged: 0 | 1;
}

const line = (address: number, bit: number, engaged: 0 | 1 = 0): Line => ({ address, bit, engaged });

export const LINES: Readonly<Record<string, Line>> = {
  'left stick right': line(0x280, 7),
  'left stick left': line(0x280, 6),
  'left stick down': line(0x280, 5),
  'left stick up': line(0x280, 4),
  'right stick right': line(0x280, 3),
  'right stick left': line(0x280, 2),
  'right stick down': line(0x280, 1),
  'right stick up': line(0x280, 0),
  'left button': line(0x0c, 7),
  'right button': line(0x0d, 7),
  'left A paddle button': line(0x280, 7),
  'left B paddle button': line(0x280, 6),
  'right A paddle button': line(0x280, 3),
  'right B paddle button': line(0x280, 2),
  // An own controller in the right port: the lines its table names. Pots read 1 when charged, so high is engaged.
  'right left pedal': line(0x0a, 7, 1),
  'right right pedal': line(0x0b, 7, 1),
  'right rope': line(0x0d, 7),
  'right bell': line(0x280, 0),
  // Keys while their row is driven: columns 1, 2, 3 of the left keypad.
  'left key 1': line(0x08, 7),
  'left key 5': line(0x09, 7),
  'left key 9': line(0x0c, 7),
  SELECT: line(0x282, 1),
  RESET: line(0x282, 0),
};

/** SWCHB bits of the two-position switches, and the level in each position (PIA 4.1). */
export const POSITIONS: Readonly<
  Record<string, { readonly bit: number; readonly reads: Readonly<Record<string, 0 | 1>> }>
> = {
  'right difficulty': { bit: 7, reads: { B: 0, A: 1 } },
  'left difficulty': { bit: 6, reads: { B: 0, A: 1 } },
  'TV type': { bit: 3, reads: { 'B-W': 0, COLOR: 1 } },
};
