import fc from 'fast-check';
import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { ptToMm } from '../../src/documents/figures/drawing.js';
import { textWidth } from '../../src/documents/figures/text-block.js';
import { viewConsole } from '../../src/documents/manual/console.js';
import { speechFor } from '../../src/documents/manual/view.js';
import { viewCards } from '../../src/documents/overlays/card-view.js';
import { fitLabel, LABEL_LEADING } from '../../src/documents/overlays/fit-label.js';
import { keyCorner } from '../../src/documents/overlays/key-piece.js';
import { viewKeyOverlays } from '../../src/documents/overlays/key-view.js';
import { createKeyFit } from '../../src/documents/overlays/keys-fit.js';
import { createOverlays, listPieces } from '../../src/documents/overlays/overlays.js';
import { marginOf, packPieces, UNDER_LINE } from '../../src/documents/overlays/pack.js';
import type { Piece } from '../../src/documents/overlays/piece.js';
import { isFromMemory, sizesOf } from '../../src/documents/overlays/sizes.js';
import { viewStrips } from '../../src/documents/overlays/strip-view.js';
import { EVERYTHING } from './everything-scheme.js';
import { file, inputOf, SCHEMES, withGame } from './inputs.js';

const withSizes = (text: string, sizes: Readonly<Record<string, string>>) =>
  `${text}\n## Overlays\n\n| Item | Value |\n| --- | --- |\n${Object.entries(sizes)
    .map(([item, value]) => `| ${item} | ${value} |`)
    .join('\n')}\n`;

const piecesOf = (text: string, kind: Piece['kind']) => {
  const input = inputOf(text);
  return listPieces(input.scheme, speechFor(input)).filter(piece => piece.kind === kind);
};

const viewsOf = (text: string) => {
  const input = inputOf(text);
  const speech = speechFor(input);
  return viewStrips(input.scheme, viewConsole(input.scheme, speech).calls, speech);
};

/** The lines of text on a piece. */
const wordsOn = (piece: Piece | undefined): readonly string[] =>
  (piece?.nodes ?? []).flatMap(node => (node.tagName === 'text' ? [textOf(node)] : []));

const textOf = ({ children }: Element): string =>
  children.map(child => (child.type === 'text' ? child.value : '')).join('');

describe('key overlays', () => {
  const { scheme } = inputOf(EVERYTHING);

  it('are there for each keypad, seats row and mode with a used key', () => {
    const night = inputOf((SCHEMES['night-exchange'] as () => string)()).scheme;
    const names = viewKeyOverlays(night).map(
      ({ mode, seats, port }) => `${seats.name}, ${mode.name}, ${port}`,
    );
    const wanted = night.seats.flatMap(seats =>
      night.modes.flatMap(mode =>
        (['left', 'right'] as const)
          .filter(port => seats[port] !== null)
          .map(port => `${seats.name}, ${mode.name}, ${port}`),
      ),
    );
    expect(names).toEqual(wanted);
  });

  it('have the short label of each used key, the quicker gesture first, and mark the parts of a chord', () => {
    const orchard = viewKeyOverlays(scheme).find(({ mode }) => mode.name === 'Orchard');
    expect(
      orchard?.keys.map(({ sign, labels }) => `${sign} ${labels.map(({ text }) => text).join('/')}`.trim()),
    ).toEqual(['1 +STAMP/KNOCK', '2 +STAMP/PULL', '3', '4', '5', '6', '7', '8', '9 SQUEEZE', '*', '0', '#']);
  });

  it('mark what only a console without a switch does, and only where others are played on too', () => {
    const night = (consoles: string) =>
      piecesOf(withGame((SCHEMES['night-exchange'] as () => string)(), { Consoles: consoles }), 'keys');
    const [roster] = night('six-switch, no-difficulty');
    expect(wordsOn(roster)).toContain('value†');
    expect(roster?.signs).toEqual([
      { mark: '†', meaning: 'only if the console lacks: Left difficulty switch' },
    ]);
    expect(roster?.text).toContain(
      '5: Callers: next value (only if the console lacks: Left difficulty switch)',
    );
    const [alone] = night('no-difficulty');
    expect(wordsOn(alone)).toContain('value');
    expect(alone?.signs).toEqual([]);
    const [german] = piecesOf(
      withGame((SCHEMES['night-exchange'] as () => string)(), { Language: 'de' }),
      'keys',
    );
    expect(wordsOn(german)).toContain('weiter†');
  });

  it('keep the sign of every used key, and tell a hold from a tap', () => {
    const night = piecesOf((SCHEMES['night-exchange'] as () => string)(), 'keys');
    const board = night.find(({ text }) => text.startsWith('Key overlay for Board, One operator'));
    const words = wordsOn(board);
    for (const sign of ['1', '2', '3', '4', '5', '6', '7', '8', '9', '*', '0', '#'])
      expect(words).toContain(sign);
    expect(words).toEqual(expect.arrayContaining(['PULL', 'PLUG', 'CLEAR', 'ALL•']));
    expect(board?.signs).toEqual([{ mark: '•', meaning: 'hold 1\u00a0s' }]);
    expect(board?.text).toContain('*: PULL PLUG, CLEAR ALL (hold 1\u00a0s)');
    const larger = piecesOf(
      (SCHEMES['night-exchange'] as () => string)().replace(
        /^\| Bleed .*$/m,
        '| Key width | 16 mm |\n| Key height | 17 mm |',
      ),
      'keys',
    ).find(({ text }) => text.startsWith('Key overlay for Board, One operator'));
    expect(wordsOn(larger)).toContain('hold 1\u00a0s');
    expect(larger?.signs).toEqual([]);
  });

  it('say at the foot of a sheet what its signs mean', () => {
    const signsIn = (text: string) =>
      [...createOverlays(inputOf(text)).html.matchAll(/<ul class="sheet-signs">(.*?)<\/ul>/g)].map(
        ([, items = '']) => items.split(/<.*?>/).filter(Boolean),
      );
    expect(signsIn(EVERYTHING)).toEqual([
      ['+\u00a0press all keys with this label together'],
      [
        '†\u00a0only if the console lacks: Left difficulty switch',
        '§\u00a0only if the console lacks: SELECT',
      ],
    ]);
    expect(signsIn((SCHEMES['night-exchange'] as () => string)()).flat()).toContain('•\u00a0hold 1\u00a0s');
  });

  it('put their keys where the sizes say', () => {
    const sizes = sizesOf(
      inputOf(withSizes(EVERYTHING, { 'Key column pitch': '18.5 mm', 'First key from left': '4 mm' })).scheme,
    );
    expect(keyCorner(0, sizes)).toEqual({ x: 4, y: 12 });
    expect(keyCorner(11, sizes)).toEqual({ x: 4 + 2 * 18.5, y: 12 + 3 * 18 });
  });

  it('say that built-in sizes are from memory, and no more when all are given', () => {
    expect(isFromMemory(scheme, 'keys')).toBe(true);
    expect(
      isFromMemory(
        inputOf(withSizes(EVERYTHING, { 'Strip width': '150 mm', 'Strip height': '30 mm' })).scheme,
        'strip',
      ),
    ).toBe(false);
  });
});

describe('fitting a label', () => {
  const words = fc.array(fc.stringMatching(/^[A-Z]{1,6}$/), { minLength: 1, maxLength: 4 });

  it('is within its room, at least 7 pt, in steps of a quarter', () => {
    fc.assert(
      fc.property(
        words,
        fc.integer({ min: 6, max: 30 }),
        fc.integer({ min: 3, max: 15 }),
        (parts, width, height) => {
          const text = parts.join(' ');
          const fitted = fitLabel(text, { width, height });
          if (fitted === null) return;
          const { sizePt, lines } = fitted;
          expect(lines.join(' ')).toBe(text);
          expect(sizePt).toBeGreaterThanOrEqual(7);
          expect(sizePt * 4).toBe(Math.round(sizePt * 4));
          for (const line of lines)
            expect(textWidth(line, { sizePt, bold: true })).toBeLessThanOrEqual(width + 1e-6);
          expect(ptToMm(sizePt * LABEL_LEADING * lines.length)).toBeLessThanOrEqual(height + 1e-6);
        },
      ),
    );
  });

  // By brute force: every way of breaking the words at every size.
  it('finds the largest size there is', () => {
    const breaks = (parts: readonly string[]): readonly (readonly string[])[] => {
      const [first, ...rest] = parts;
      if (first === undefined) return [[]];
      if (rest.length === 0) return [[first]];
      return breaks(rest).flatMap(([head = '', ...others]) => [
        [first, head, ...others],
        [`${first} ${head}`, ...others],
      ]);
    };
    fc.assert(
      fc.property(
        words,
        fc.integer({ min: 6, max: 30 }),
        fc.integer({ min: 3, max: 15 }),
        (parts, width, height) => {
          let largest: number | null = null;
          for (let sizePt = 7; sizePt <= 12; sizePt += 0.25) {
            const fits = breaks(parts).some(
              lines =>
                lines.every(line => textWidth(line, { sizePt, bold: true }) <= width) &&
                ptToMm(sizePt * LABEL_LEADING * lines.length) <= height,
            );
            if (fits) largest = sizePt;
          }
          expect(fitLabel(parts.join(' '), { width, height })?.sizePt ?? null).toBe(largest);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('a label on its key', () => {
  const misfit = (short: string, sizes: Readonly<Record<string, string>> = {}) => {
    const text = EVERYTHING.replace('| SQUEEZE |', `| ${short} |`);
    const { scheme } = inputOf(Object.keys(sizes).length === 0 ? text : withSizes(text, sizes));
    const action = scheme.actions.find(({ name }) => name === 'Squeeze');
    if (action === undefined) throw new Error('no such action');
    return createKeyFit(scheme)(action, short);
  };

  it('fits where its words do', () => {
    expect(misfit('SQUEEZE')).toBeNull();
    expect(misfit('THE JUICE')).toBeNull();
  });

  it('is told by how much it is too wide', () => {
    const found = misfit('MMMMMMMMMM');
    // Measured apart from the code: ten capital M of the bold face at 7 pt.
    const wide = Math.round(textWidth('MMMMMMMMMM', { sizePt: 7, bold: true }) * 10) / 10;
    expect(found?.problem).toBe(
      `does not fit key 9 in Orchard: at 7 pt it is ${wide} mm wide, the key has 11 mm`,
    );
    expect(found?.limit).toMatch(/^words of about \d letters$/);
  });

  it('needs room for the sign that tells a hold from a press', () => {
    const width = Math.ceil((textWidth('SQUEEZE', { sizePt: 7, bold: true }) + 1) * 10) / 10;
    const held = EVERYTHING.replace('| key 9 | repeat every 0.2 s |', '| key 9 | hold 1 s |');
    const [pressed, told] = [EVERYTHING, held].map(text => {
      const { scheme } = inputOf(withSizes(text, { 'Key width': `${width} mm` }));
      const action = scheme.actions.find(({ name }) => name === 'Squeeze');
      return action === undefined ? undefined : createKeyFit(scheme)(action, 'SQUEEZE');
    });
    expect(pressed).toBeNull();
    expect(told?.problem).toContain('does not fit key 9 in Orchard');
  });

  it('depends on the size of the keys', () => {
    expect(misfit('SQUEEZE', { 'Key width': '9 mm' })).not.toBeNull();
    expect(misfit('A B C D E', { 'Key height': '3 mm', 'Key width': '5 mm' })?.problem).toContain('too high');
  });
});

describe('packing', () => {
  const area = { x: 5, y: 17, width: 200, height: 248 };

  it.each(Object.keys(SCHEMES))('%s: nothing overlaps or leaves the sheet, nothing is lost', name => {
    const input = inputOf((SCHEMES[name] as () => string)());
    const pieces = listPieces(input.scheme, speechFor(input));
    const sheets = packPieces(pieces, area, 3);
    expect(sheets.flat()).toHaveLength(pieces.length);
    expect(new Set(sheets.flat().map(({ piece }) => piece)).size).toBe(pieces.length);
    const margin = marginOf(3);
    for (const sheet of sheets) {
      const boxes = sheet.map(({ piece, x, y, isTurned }) => {
        const under = piece.under.length * UNDER_LINE;
        const [w, h] = isTurned ? [piece.height + under, piece.width] : [piece.width, piece.height + under];
        return { left: x - margin, top: y - margin, right: x + w + margin, bottom: y + h + margin };
      });
      for (const [index, box] of boxes.entries()) {
        expect(box.left).toBeGreaterThanOrEqual(area.x - 1e-9);
        expect(box.top).toBeGreaterThanOrEqual(area.y - 1e-9);
        expect(box.right).toBeLessThanOrEqual(area.x + area.width + 1e-9);
        expect(box.bottom).toBeLessThanOrEqual(area.y + area.height + 1e-9);
        for (const other of boxes.slice(index + 1)) {
          const apart =
            box.right <= other.left + 1e-9 ||
            other.right <= box.left + 1e-9 ||
            box.bottom <= other.top + 1e-9 ||
            other.bottom <= box.top + 1e-9;
          expect(apart).toBe(true);
        }
      }
    }
  });

  it('prints a piece larger than the sheet in parts', () => {
    const input = inputOf(withSizes(EVERYTHING, { 'Strip width': '400 mm' }));
    const pieces = listPieces(input.scheme, speechFor(input)).filter(({ kind }) => kind === 'strip');
    const parts = packPieces(pieces, area, 3).flat();
    expect(parts.length).toBeGreaterThan(pieces.length);
    const total = parts.reduce((sum, { piece }) => sum + piece.width * piece.height, 0);
    expect(total).toBeCloseTo(pieces.reduce((sum, { width, height }) => sum + width * height, 0));
  });
});

describe('strips and cards', () => {
  it('are there for the six-switch and the four-switch panel, and one for each controller', () => {
    const text = withGame(EVERYTHING, { Consoles: 'six-switch, four-switch, no-difficulty' });
    expect(piecesOf(text, 'strip').map(({ under }) => under[0])).toEqual([
      'Six-switch console',
      'Four-switch console, Console without difficulty switches',
    ]);
    expect(piecesOf(text, 'card')).toHaveLength(5);
  });

  it('say on a strip what the switch does on its console, by a fallback too', () => {
    const text = EVERYTHING.replace('Gate: left stick up press', 'Gate: SELECT hold 1 s').replace(
      'Gate: button press',
      'Orchard: RESET tap under 1 s',
    );
    const views = viewsOf(
      text.replace(
        '| anyone | Close the gate |',
        '| anyone | Choose a tree | SELECT | press | | Tree: next | | |\n$&',
      ),
    );
    expect(views.map(({ consoles }) => consoles.map(({ name }) => name))).toEqual([
      ['six-switch'],
      ['four-switch'],
      ['no-difficulty'],
      ['Bench rig'],
    ]);
    const said = (index: number, label: string) =>
      [...(views[index]?.front ?? []), ...(views[index]?.rear ?? [])].find(column => column.label === label)
        ?.modes;
    expect(said(0, 'SELECT')).toEqual(['Choose a tree', 'Choose a tree']);
    expect(said(2, 'SELECT')).toEqual(['Choose a tree, Wind: next value (hold 1\u00a0s)', 'Choose a tree']);
    expect(said(0, 'RESET')).toEqual(['Begin', 'Close the gate (hold 4\u00a0s)']);
    expect(said(3, 'RESET')).toEqual(['Begin', 'Choose a tree (tap), Close the gate (hold 4\u00a0s)']);
    expect(said(3, 'SELECT')).toBeUndefined();
  });

  it('number the strips that belong together, each with the settings and none with one mode left over', () => {
    const strips = piecesOf(file('schemes/swarm-season.md'), 'strip');
    expect(strips.map(({ under }) => under[0])).toEqual([
      'Six-switch console · 1 of 2',
      'Six-switch console · 2 of 2',
      'Four-switch console, Console without difficulty switches · 1 of 2',
      'Four-switch console, Console without difficulty switches · 2 of 2',
    ]);
    for (const [index, strip] of strips.entries()) {
      const words = wordsOn(strip);
      expect(words).toContain('B calm, A cross');
      expect(words.filter(text => ['Hut', 'Hillside', 'Rest', 'Tally'].includes(text))).toEqual(
        index % 2 === 0 ? ['Hut', 'Hillside'] : ['Rest', 'Tally'],
      );
    }
    // “Go home (hold 1.5 s)” stands on one line on every strip.
    expect(strips.flatMap(wordsOn).filter(text => text === 'Go home (hold 1.5\u00a0s)')).toHaveLength(4);
  });

  it('tell on a card what a fallback makes of a control, whose it is and where', () => {
    const rowsOf = (text: string) => {
      const input = inputOf(text);
      return viewCards(input.scheme, speechFor(input)).map(({ rows, signs }) => ({
        rows: rows.map(({ label, words }) => `${label}: ${words}`),
        signs,
      }));
    };
    const [swarm] = rowsOf(file('schemes/swarm-season.md'));
    expect(swarm?.rows).toEqual([
      'Stick: Hillside: Walk',
      'Stick up: Hut: Bees: next value (Left player)†',
      expect.stringMatching(/^Button: Hut: Set out; /),
    ]);
    expect(swarm?.signs).toEqual([
      { mark: '†', meaning: 'only if the console lacks: Left difficulty switch' },
    ]);
    const [always] = rowsOf(withGame(file('schemes/swarm-season.md'), { Consoles: 'no-difficulty' }));
    expect(always?.rows).toContain('Stick up: Hut: Bees: next value (Left player)');
    expect(always?.signs).toEqual([]);
    const night = rowsOf(file('schemes/night-exchange.md'));
    expect(night[0]?.rows.find(row => row.startsWith('Key 5'))).toMatch(
      /Duty roster: Callers: next value .*†$/,
    );
    const everything = rowsOf(EVERYTHING);
    expect(everything.flatMap(({ rows }) => rows)).toContain(
      'Stick left: Gate: Go back a tree; Orchard: Walk',
    );
    expect(everything[0]?.rows.find(row => row.startsWith('Button'))).toContain(
      'Gate: Choose a tree (press)§',
    );
  });

  it('tell on a card in which seats a part of a controller does nothing', () => {
    const input = inputOf(EVERYTHING.replace('| Keys | 1 |', '| Solo | 1 | paddles | empty |\n$&'));
    const rows = viewCards(input.scheme, speechFor(input)).flatMap(card => card.rows);
    expect(rows.find(({ label }) => label === 'Knob B')?.words).toMatch(/\. Not in: Solo\.$/);
    expect(rows.find(({ label }) => label === 'Knob A')?.words).not.toContain('Not in');
  });

  it('explain a sign on that of several cards on which it stands', () => {
    const night = piecesOf(file('schemes/night-exchange.md'), 'card');
    const isMarked = night.map(card => wordsOn(card).some(text => /.†$/.test(text)));
    expect(isMarked).toEqual([true, false]);
    expect(night.map(card => wordsOn(card).includes('†'))).toEqual(isMarked);
    expect(night.map(({ signs }) => signs.length)).toEqual([1, 0]);
  });

  it('draw no controller of which nobody knows the look', () => {
    const board = piecesOf(EVERYTHING, 'card').find(({ text }) => text.startsWith('Card for the Foot board'));
    const isDrawn = (piece: Piece | undefined) => piece?.nodes.some(({ tagName }) => tagName === 'g');
    expect(isDrawn(board)).toBe(false);
    expect(isDrawn(piecesOf(file('schemes/swarm-season.md'), 'card')[0])).toBe(true);
  });
});
