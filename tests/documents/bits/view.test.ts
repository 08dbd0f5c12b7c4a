import { describe, expect, test } from 'vitest';
import { viewMode } from '../../../src/documents/bits/mode-view.js';
import { viewPorts } from '../../../src/documents/bits/port-view.js';
import { viewRegisterMaps } from '../../../src/documents/bits/register-maps.js';
import { viewSetup } from '../../../src/documents/bits/setup-view.js';
import { viewBits } from '../../../src/documents/bits/view.js';
import { keypadSettling, paddleReach, wheelTurnsPerSecond } from '../../../src/hardware/analog.js';
import { STANDARDS } from '../../../src/hardware/clocks.js';
import { LINES, POSITIONS } from './lines.js';
import { DYE_WORKS, inputOf, modeAndSeats } from './support.js';

const { scheme } = inputOf(DYE_WORKS);
const view = viewBits(scheme);

const tableOf = (mode: string, seats: string) => {
  const found = modeAndSeats(scheme, mode, seats);
  return viewMode(scheme, found.mode, found.seats);
};

describe('where each control is read', () => {
  test('register, bit, mask and level are those of the programmer’s guide (PIA 4.1, 5.3 to 5.5, TIA 12)', () => {
    const wires = view.modes.flatMap(({ actions }) =>
      actions.flatMap(({ lines }) => lines.flatMap(line => line.wires)),
    );
    const seen = new Set<string>();
    for (const { control, address, bit, mask, engagedReads } of wires) {
      const line = LINES[control];
      if (line === undefined) continue;
      seen.add(control);
      expect({ control, address, bit, mask, engagedReads }).toEqual({
        control,
        address: `$${line.address.toString(16).toUpperCase().padStart(4, '0')}`,
        bit: `D${line.bit}`,
        mask: `$${(2 ** line.bit).toString(16).toUpperCase().padStart(2, '0')}`,
        engagedReads: String(line.engaged),
      });
    }
    expect(seen.size).toBeGreaterThan(18);
  });

  test('a position of a switch reads its own level; a flip is a change', () => {
    const cells = ['Yard', 'Work'].flatMap(mode =>
      tableOf(mode, 'Turning').actions.flatMap(({ lines }) =>
        lines.flatMap(({ wires, gesture }) =>
          wires.map(wire => [wire.control, gesture, wire.bit, wire.engagedReads]),
        ),
      ),
    );
    expect(cells.filter(([control]) => control !== undefined && control in POSITIONS)).toEqual([
      ['left difficulty', 'flip', 'D6', 'change'],
      ['TV type', 'at B-W', 'D3', '0'],
      ['right difficulty', 'flip to A', 'D7', '1'],
    ]);
  });

  test('keys tell their row as well, paddles count, the wheel has a code of two bits', () => {
    const keys = tableOf('Work', 'Counting').actions.find(({ action }) => action === 'Order all');
    expect(keys?.lines[0]?.wires.map(({ before }) => before)).toEqual([
      'SWCHA D4 low',
      'SWCHA D5 low',
      'SWCHA D6 low',
    ]);
    expect(tableOf('Work', 'Pouring').actions[0]?.lines.map(({ wires }) => wires[0]?.register)).toEqual([
      'INPT0',
      'INPT1',
      'INPT2',
      'INPT3',
    ]);
    expect(tableOf('Work', 'Turning').actions[0]?.lines[0]?.wires[0]).toMatchObject({
      bit: 'D5 D4',
      mask: '$30',
    });
  });
});

describe('times', () => {
  /** Frame rates from the colour subcarriers of ITU-R BT.1700 and SMPTE 170M. */
  const RATES = { NTSC: 315e6 / 88 / (228 * 262), PAL: (4.43361875e6 * 4) / 5 / (228 * 312) };

  test('the standards are told with their rates', () => {
    expect(
      view.standards.map(({ name, frameRate, cpuClock, cyclesPerRead }) => [
        name,
        frameRate,
        cpuClock,
        cyclesPerRead,
      ]),
    ).toEqual([
      ['NTSC', `${RATES.NTSC.toFixed(4)} Hz`, '1.193182 MHz', String(262 * 76)],
      ['PAL', `${RATES.PAL.toFixed(4)} Hz`, '1.182298 MHz', String(312 * 76)],
      ['SECAM', `${RATES.PAL.toFixed(4)} Hz`, '1.182298 MHz', String(312 * 76)],
    ]);
  });

  test('a gesture’s reads and milliseconds follow from them', () => {
    const lines = tableOf('Work', 'Counting').actions.flatMap(({ action, lines: own }) =>
      own.map(({ reads }) => [action, reads.map(text => text.replaceAll('\u00a0', ' '))] as const),
    );
    const readsOf = (wanted: string) => lines.find(([action]) => action === wanted)?.[1];
    const ms = (reads: number, rate: number) => ((reads / rate) * 1000).toFixed(0);
    expect(readsOf('Tread')).toEqual([
      `NTSC: 12 reads, ${ms(12, RATES.NTSC)} ms`,
      `PAL, SECAM: 10 reads, ${ms(10, RATES.PAL)} ms`,
    ]);
    expect(readsOf('Ring')).toEqual([
      `NTSC: ≤ 24 reads, ${ms(24, RATES.NTSC)} ms`,
      `PAL, SECAM: ≤ 20 reads, ${ms(20, RATES.PAL)} ms`,
    ]);
    expect(readsOf('Order red')).toEqual([]);
    // A tap under 20 frames is let go after at most 19 reads.
    const [pour] = tableOf('Work', 'Pouring').actions.flatMap(each =>
      each.action === 'Pour' ? each.lines : [],
    );
    expect(pour?.reads[0]?.replaceAll('\u00a0', ' ')).toBe(`NTSC: ≤ 19 reads, ${ms(19, RATES.NTSC)} ms`);
  });

  test('the keypad settles in 478 cycles, 7 lines on NTSC (400 µs, from memory)', () => {
    expect(keypadSettling(STANDARDS.NTSC)).toEqual({ cycles: 478, lines: 7 });
    expect(keypadSettling(STANDARDS.PAL)).toEqual({
      cycles: Math.ceil((400e-6 * 4.43361875e6 * 4) / 5 / 3),
      lines: 7,
    });
  });

  test('a paddle’s far end is out of sight unless two frames lie between the reads', () => {
    expect(paddleReach(STANDARDS.NTSC, 1)).toMatchObject({ lines: 262, part: 262 / 380 });
    expect(paddleReach(STANDARDS.PAL, 1).degrees).toBeCloseTo((312 / 380) * 330);
    expect(paddleReach(STANDARDS.NTSC, 2)).toEqual({ lines: 524, part: 1, degrees: 330 });
  });

  test('a wheel of 16 steps can be followed at 3.75 turns a second at 60 reads a second', () => {
    expect(wheelTurnsPerSecond(STANDARDS.NTSC, 1)).toBeCloseTo(RATES.NTSC / 16);
    expect(wheelTurnsPerSecond(STANDARDS.PAL, 2)).toBeCloseTo(RATES.PAL / 32);
    expect(wheelTurnsPerSecond(STANDARDS.NTSC, 1)).toBeCloseTo(3.75, 1);
  });
});

describe('data direction and VBLANK (programmer’s guide PIA 5.1 and 5.5, TIA 12)', () => {
  const setupOf = (mode: string, seats: string) => {
    const found = modeAndSeats(scheme, mode, seats);
    return viewSetup(scheme, found.mode, found.seats);
  };

  test('a keypad’s rows are driven one after the other, nothing else is an output', () => {
    expect(setupOf('Work', 'Counting').swacnt).toEqual(['$10', '$20', '$40']);
    expect(setupOf('Yard', 'Counting').swacnt).toEqual(['$10', '$20', '$40']);
    expect(setupOf('Work', 'Turning').swacnt).toEqual(['$00']);
  });

  test('the dump is used for pots, off for contacts on their lines, and free elsewhere', () => {
    expect(setupOf('Work', 'Pouring').vblankD7).toMatch(/^1 to dump/);
    expect(setupOf('Work', 'Counting').vblankD7).toMatch(/^0:/);
    expect(setupOf('Work', 'Turning').vblankD7).toMatch(/^free/);
  });

  test('the latch is on where the scheme wants it', () => {
    expect(setupOf('Work', 'Turning').vblankD6).toMatch(/^0/);
    const latched = inputOf(DYE_WORKS.replace(/\| off +\|/, '| cleared each read |')).scheme;
    const { mode, seats } = modeAndSeats(latched, 'Work', 'Turning');
    expect(viewSetup(latched, mode, seats).vblankD6).toMatch(/^1; .*after each read/);
  });
});

describe('maps', () => {
  const mapOf = (seats: string, register: string) => {
    const map = viewRegisterMaps(scheme, modeAndSeats(scheme, 'Work', seats).seats).find(
      each => each.register === register,
    );
    if (map === undefined) throw new Error(`no ${register}`);
    return map.bits.map(({ bit, use, names }) => `D${bit} ${use} ${names.join('+')}`.trim());
  };

  test('every register has eight bits; D5, D4 and D2 of SWCHB are not used (PIA 4.1)', () => {
    expect(view.seats.flatMap(({ maps }) => maps).every(({ bits }) => bits.length === 8)).toBe(true);
    expect(mapOf('Turning', 'SWCHB')).toEqual([
      'D7 bound right difficulty',
      'D6 bound left difficulty',
      'D5 unused',
      'D4 unused',
      'D3 bound TV type',
      'D2 unused',
      'D1 bound SELECT',
      'D0 bound RESET',
    ]);
  });

  test('a keypad’s rows are outputs, its unused row is only wired, the rest are inputs', () => {
    expect(mapOf('Counting', 'SWACNT')).toEqual([
      'D7 wired left keys row 4',
      'D6 bound left keys row 3',
      'D5 bound left keys row 2',
      'D4 bound left keys row 1',
      'D3 wired input',
      'D2 wired input',
      'D1 wired input',
      'D0 wired input',
    ]);
  });

  test('paddle buttons are on SWCHA D7, D6, D3, D2 (PIA 5.4)', () => {
    expect(mapOf('Pouring', 'SWCHA').filter(text => !text.includes('unused'))).toEqual([
      'D7 bound left A paddle button',
      'D6 bound left B paddle button',
      'D3 bound right A paddle button',
      'D2 bound right B paddle button',
    ]);
  });

  test('pins of the connectors (from memory)', () => {
    const [left, right] = viewPorts(modeAndSeats(scheme, 'Work', 'Counting').seats);
    expect(left?.pins.map(({ pin, line }) => `${pin} ${line}`)).toEqual([
      '1 up',
      '2 down',
      '3 left',
      '4 right',
      '5 pot B',
      '6 button',
      '7 +5 V',
      '8 ground',
      '9 pot A',
    ]);
    expect(left?.pins.map(({ carries }) => carries.join())).toEqual([
      'row 1',
      'row 2',
      'row 3',
      'row 4',
      'column 2',
      'column 3',
      '',
      '',
      'column 1',
    ]);
    expect(right?.pins.find(({ pin }) => pin === 9)?.carries).toEqual(['right left pedal']);
  });
});

describe('what else a mode’s table says', () => {
  test('When, Then, Instead of and Along with', () => {
    const notes = (action: string, seats: string) =>
      tableOf('Work', seats).actions.find(each => each.action === action)?.notes;
    expect(notes('Rush', 'Turning')).toEqual([
      'When Cloth is silk and Vat is not 2',
      'Then Cloth: wool',
      'Holds back Call and Walk',
    ]);
    expect(notes('Sluice', 'Counting')).toEqual(['Along with Ring']);
  });

  test('what the game does by itself', () => {
    expect(tableOf('Work', 'Pouring').byItself).toEqual([
      { action: 'Noon', notes: ['When Vat is 4', 'Then go to Yard'] },
    ]);
  });

  test('fallbacks, and consoles on which a row can’t be done', () => {
    const { actions } = tableOf('Yard', 'Turning');
    const river = actions.find(({ action }) => action === 'River: next');
    expect(river?.notes).toEqual(['Then River: next', 'In place of left difficulty']);
    expect(river?.lines.map(({ notes }) => notes)).toEqual([['Only on no-difficulty']]);
    const choose = actions.find(({ action }) => action === 'Choose a vat');
    expect(choose?.lines.map(({ wires, notes }) => [wires[0]?.control, notes])).toEqual([
      ['SELECT', ['Only on six-switch and no-difficulty']],
      ['left button', []],
    ]);
    const sign = actions.find(({ action }) => action === 'Turn the sign');
    expect(sign?.lines[0]?.notes).toEqual(['Not on no-difficulty: fixed there']);
  });

  test('ghost keys where a key is held, and only there', () => {
    expect(tableOf('Work', 'Counting').cautions).toEqual([expect.stringContaining('Order red')]);
    expect(tableOf('Work', 'Turning').cautions).toEqual([]);
  });

  test('every different test is paid for once', () => {
    const { cost, actions } = tableOf('Yard', 'Pouring');
    const tests = actions.flatMap(({ lines }) => lines.map(({ test: cells }) => cells));
    expect(cost).toEqual({
      tests: 3,
      bytes: tests.reduce((sum, { bytes }) => sum + bytes, 0),
      cycles: tests.reduce(
        (sum, { engagedCycles, idleCycles }) => sum + Math.max(engagedCycles, idleCycles.most),
        0,
      ),
    });
  });
});

describe('consoles and settings', () => {
  test('what a fixed and an absent switch read', () => {
    const row = (name: string) => view.consoles.rows.find(each => each.name === name)?.cells;
    expect(view.consoles.consoles).toEqual(['six-switch', 'no-difficulty', 'workbench']);
    expect(row('left difficulty')).toEqual(['front', 'not there: always reads 0 (B)', 'front']);
    expect(row('SELECT')).toEqual(['front', 'front', 'not there: always reads 1']);
    expect(row('TV type')).toEqual(['front', 'front', 'not there: always reads 1 (COLOR)']);
    expect(row('right difficulty')?.[2]).toMatch(/^rear/);
  });

  test('what decides a setting on each console', () => {
    const cells = (name: string) => view.settings.find(each => each.name === name)?.cells;
    expect(cells('River')).toEqual([
      'SWCHB D6: 0 (B) = low, 1 (A) = high',
      'the game keeps it in RAM, from low; stepped by the fallback',
      'SWCHB D6: 0 (B) = low, 1 (A) = high',
    ]);
    expect(cells('Picture')?.[2]).toBe('always colour');
    expect(cells('Vat')).toEqual(Array(3).fill('the game keeps it in RAM'));
    expect(view.settings.find(({ name }) => name === 'Vat')?.values).toBe('1 to 4, kept as 0 to 3');
  });
});

describe('state in RAM', () => {
  test('offsets follow each other, and the total is that of the mode that needs most', () => {
    const { shared, modes, total } = view.ram;
    expect(shared.map(({ offset }) => offset)).toEqual(shared.map((_, index) => index));
    for (const { bytes } of modes) {
      expect(bytes.map(({ offset }) => offset)).toEqual(bytes.map((_, index) => shared.length + index));
    }
    expect(total).toBe(shared.length + Math.max(...modes.map(({ bytes }) => bytes.length)));
    expect(total).toBeLessThan(128);
  });

  test('there is a byte for each name that a test keeps something in', () => {
    const kept = view.modes.flatMap(({ actions }) =>
      actions.flatMap(({ lines }) =>
        lines.flatMap(({ test: { code } }) => code.join('\n').match(/[a-z]+_\w+/g) ?? []),
      ),
    );
    const names = new Set(
      [...view.ram.shared, ...view.ram.modes.flatMap(({ bytes }) => bytes)].map(({ name }) => name),
    );
    expect(kept.length).toBeGreaterThan(0);
    expect(kept.filter(name => !names.has(name))).toEqual([]);
  });
});

describe('procedures', () => {
  /** Cycles by mnemonic and addressing from the MCS6500 family programming manual; registers at $80 and above are absolute. */
  const CYCLES: Readonly<Record<string, number>> = {
    'LDA #': 2,
    'AND #': 2,
    'LDA a': 4,
    'STA a': 4,
    'STA z': 3,
    'STY z': 3,
    'BIT z': 3,
    'CMP z': 3,
    BMI: 2,
    BEQ: 2,
  };
  const kindOf = (code: string): string => {
    const [mnemonic = '', operand = ''] = code.split(' ');
    if (mnemonic.startsWith('B') && mnemonic !== 'BIT') return mnemonic;
    if (operand.startsWith('#')) return `${mnemonic} #`;
    return `${mnemonic} ${/^SW/.test(operand) ? 'a' : 'z'}`;
  };

  test('are there for what the seats rows have, and not otherwise', () => {
    expect(view.procedures.map(({ title }) => title)).toEqual(['Paddles', 'Keypads', 'Wheels']);
  });

  test('the latch is written with the pots’ bit where there are paddles', () => {
    const latched = inputOf(DYE_WORKS.replace(/\| off +\|/, '| cleared on use |')).scheme;
    const [latch] = viewBits(latched).procedures;
    expect(latch?.code.map(({ comment }) => comment)).toEqual([
      expect.stringMatching(/#\$02 while the picture is blanked, #\$82 while the pots are dumped too$/),
      expect.any(String),
      expect.stringMatching(/#\$42 while the picture is blanked, #\$C2 while the pots are dumped too$/),
      expect.any(String),
    ]);
  });

  test('each line costs what the manual says', () => {
    const latched = inputOf(DYE_WORKS.replace(/\| off +\|/, '| cleared on use |')).scheme;
    const lines = viewBits(latched)
      .procedures.flatMap(({ code }) => code)
      .filter(({ code }) => !code.startsWith(';'));
    expect(lines.length).toBeGreaterThan(14);
    for (const { code, comment } of lines) {
      expect(`${code}: ${Number.parseInt(comment, 10)}`).toBe(`${code}: ${CYCLES[kindOf(code)]}`);
    }
  });
});

test('seats rows in which a mode is read alike share a table', () => {
  const titles = view.modes.map(
    ({ mode, seats }) => `${mode.name}: ${seats.map(({ name }) => name).join(', ')}`,
  );
  expect(titles).toEqual([
    'Yard: Turning',
    'Yard: Pouring, Counting',
    'Work: Turning',
    'Work: Pouring',
    'Work: Counting',
  ]);
  // Its keys are scanned in every mode of the row, so the row keeps a line of its own here.
  expect(view.setups.map(({ mode, seats }) => `${mode}: ${seats}`)).toContain('Yard: Counting');
});

test('keys in different rows are different tests, though their code is the same', () => {
  const scattered = DYE_WORKS.replace(
    '| left   | Order all     | key 1 + key 5 + key 9    | press ',
    '| left   | Order all     | key 4                    | press ',
  );
  const { scheme: changed } = inputOf(scattered);
  const { mode, seats } = modeAndSeats(changed, 'Work', 'Counting');
  const { actions, cost } = viewMode(changed, mode, seats);
  const codes = actions.flatMap(({ lines }) => lines.map(({ test: cells }) => cells.code.join()));
  expect(codes.filter(code => code === 'BIT INPT0,BMI skip')).toHaveLength(2);
  expect(cost.tests).toBe(codes.length);
});
