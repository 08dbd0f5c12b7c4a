import fc from 'fast-check';
import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { type Call, drawCallOuts } from '../../src/documents/figures/call-outs.js';
import { drawController, spotKey } from '../../src/documents/figures/controller-art.js';
import type { Drawing } from '../../src/documents/figures/drawing.js';
import { drawPanel } from '../../src/documents/figures/panel.js';
import { placeInOrder } from '../../src/documents/figures/placement.js';
import { breakLines, shorten, textWidth } from '../../src/documents/figures/text-block.js';
import { CONSOLES } from '../../src/hardware/consoles.js';
import { CONTROLLERS, createOwnController } from '../../src/hardware/controllers.js';
import { SWITCH_NAMES } from '../../src/hardware/switches.js';

const own = createOwnController(
  'foot board',
  (['up', 'down', 'left', 'right', 'button', 'pot A', 'pot B'] as const).map(line => ({
    name: `pedal ${line}`,
    line,
  })),
);
const ALL = [...CONTROLLERS, own];

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly text: string;
}

/** The lines of text of a call-out figure, as boxes in mm; a line is 0.9 of its size high above its baseline. */
function textBoxes({ nodes }: Drawing): readonly Box[] {
  const [, texts] = nodes;
  return (texts?.children ?? []).flatMap((node): Box[] => {
    if (node.type !== 'element' || node.tagName !== 'text') return [];
    const { x, y, fontSize, textAnchor, className } = node.properties;
    const [first] = node.children;
    const text = first?.type === 'text' ? first.value : '';
    const sizePt = (Number(fontSize) * 72) / 25.4;
    const width = textWidth(text, { sizePt, bold: String(className).includes('bold') });
    const left = textAnchor === 'end' ? Number(x) - width : Number(x);
    return [
      {
        left,
        right: left + width,
        top: Number(y) - Number(fontSize) * 0.8,
        bottom: Number(y) + Number(fontSize) * 0.2,
        text,
      },
    ];
  });
}

/** The leaders of a call-out figure, as lists of points. */
function leaders({ nodes }: Drawing): readonly (readonly (readonly [number, number])[])[] {
  const [, drawn] = nodes;
  return (drawn?.children ?? []).flatMap(node =>
    node.type === 'element' && node.tagName === 'path' ? [pointsOf(node)] : [],
  );
}

const pointsOf = ({ properties }: Element) =>
  String(properties['d'])
    .slice(1)
    .split('L')
    .map(pair => pair.split(' ').map(Number) as unknown as readonly [number, number]);

function cross(
  a: readonly (readonly [number, number])[],
  b: readonly (readonly [number, number])[],
): boolean {
  const side = (p: readonly number[], q: readonly number[], r: readonly number[]) =>
    ((q[0] ?? 0) - (p[0] ?? 0)) * ((r[1] ?? 0) - (p[1] ?? 0)) -
    ((q[1] ?? 0) - (p[1] ?? 0)) * ((r[0] ?? 0) - (p[0] ?? 0));
  return a.slice(1).some((end, i) =>
    b.slice(1).some((last, j) => {
      const [p, q] = [a[i] ?? [], end];
      const [r, s] = [b[j] ?? [], last];
      return side(p, q, r) * side(p, q, s) < -1e-9 && side(r, s, p) * side(r, s, q) < -1e-9;
    }),
  );
}

describe('call-outs', () => {
  it.each(ALL.map(controller => [controller.name, controller] as const))(
    'of any controls of a %s neither overlap nor cross, and stay in the figure',
    (_, controller) => {
      const art = drawController(controller);
      const keys = controller.controls.map(({ name, seat }) => spotKey(name, seat));
      expect([...art.spots.keys()].sort()).toEqual([...keys].sort());
      const line = fc.array(fc.constantFrom('a', 'the', 'orchard', 'gatekeeper', 'Unterwasserboot'), {
        maxLength: 30,
      });
      const call = fc.record({ head: line, lines: fc.array(line, { maxLength: 4 }) });
      fc.assert(
        fc.property(
          fc.subarray(keys),
          fc.array(call, { minLength: keys.length, maxLength: keys.length }),
          fc.integer({ min: 100, max: 170 }),
          (used, said, width) => {
            const calls: Call[] = used.map((key, index) => ({
              spots: [key],
              head: `${key} ${said[index]?.head.join(' ')}`,
              lines: said[index]?.lines.map(words => words.join(' ')) ?? [],
            }));
            const drawing = drawCallOuts(art, calls, { width, scale: 0.7 });
            const boxes = textBoxes(drawing).filter(({ text }) => text !== '');
            for (const [index, box] of boxes.entries()) {
              expect(box.left).toBeGreaterThan(-0.05);
              expect(box.right).toBeLessThan(width + 0.05);
              expect(box.top).toBeGreaterThan(-0.05);
              expect(box.bottom).toBeLessThan(drawing.height + 0.05);
              for (const other of boxes.slice(index + 1)) {
                const apart =
                  box.right < other.left ||
                  other.right < box.left ||
                  box.bottom <= other.top + 0.01 ||
                  other.bottom <= box.top + 0.01;
                expect(apart, `${box.text} / ${other.text}`).toBe(true);
              }
            }
            const lines = leaders(drawing);
            expect(lines).toHaveLength(used.length);
            for (const [index, one] of lines.entries())
              for (const other of lines.slice(index + 1)) expect(cross(one, other)).toBe(false);
          },
        ),
        { numRuns: 25 },
      );
    },
  );
});

describe('the drawing of a keypad', () => {
  it.each([1, 0.55])('points at each key on the key itself, beside what is lettered on it (%s)', scale => {
    const keypad = CONTROLLERS.find(({ name }) => name === 'keypad');
    if (keypad === undefined) throw new Error('there is no keypad');
    const { nodes, spots } = drawController(keypad, scale);
    const keys = nodes.flatMap(({ tagName, properties }) =>
      tagName === 'rect' && Number(properties['width']) < 10 ? [properties] : [],
    );
    expect(keys).toHaveLength(12);
    const letters = nodes.filter(({ tagName }) => tagName === 'text').map(({ properties }) => properties);
    for (const [name, { x, y }] of spots) {
      const key = keys.findIndex(
        at =>
          x > Number(at['x']) &&
          x < Number(at['x']) + Number(at['width']) &&
          y > Number(at['y']) &&
          y < Number(at['y']) + Number(at['height']),
      );
      expect(key, name).toBeGreaterThanOrEqual(0);
      const { x: centre, y: baseline } = letters[key] ?? {};
      const isBeside = Math.abs(x - Number(centre)) > 2 || y - 0.55 / scale > Number(baseline);
      expect(isBeside, name).toBe(true);
    }
  });
});

describe('placing in order', () => {
  const wishes = fc.array(
    fc.record({
      centre: fc.double({ min: 0, max: 100, noNaN: true }),
      height: fc.double({ min: 1, max: 20, noNaN: true }),
    }),
    { minLength: 1, maxLength: 6 },
  );

  it('keeps the order and the gap', () => {
    fc.assert(
      fc.property(wishes, wanted => {
        const tops = placeInOrder(wanted, 2);
        for (let i = 1; i < tops.length; i += 1)
          expect(tops[i]).toBeGreaterThanOrEqual(
            (tops[i - 1] ?? 0) + (wanted[i - 1]?.height ?? 0) + 2 - 1e-9,
          );
      }),
    );
  });

  // The least sum of squares has no better neighbour: no single piece and no run of pieces can move and lower it.
  it('moves pieces as little as can be', () => {
    const cost = (wanted: readonly { centre: number; height: number }[], tops: readonly number[]) =>
      wanted.reduce((sum, { centre, height }, i) => sum + ((tops[i] ?? 0) + height / 2 - centre) ** 2, 0);
    const fits = (wanted: readonly { height: number }[], tops: readonly number[]) =>
      tops.every((top, i) => i === 0 || top >= (tops[i - 1] ?? 0) + (wanted[i - 1]?.height ?? 0) + 2 - 1e-9);
    fc.assert(
      fc.property(wishes, wanted => {
        const tops = placeInOrder(wanted, 2);
        const best = cost(wanted, tops);
        for (let from = 0; from < tops.length; from += 1)
          for (let to = from + 1; to <= tops.length; to += 1)
            for (const step of [-0.1, 0.1]) {
              const moved = tops.map((top, i) => (i >= from && i < to ? top + step : top));
              if (fits(wanted, moved)) expect(cost(wanted, moved)).toBeGreaterThanOrEqual(best - 1e-6);
            }
      }),
    );
  });
});

describe('breaking lines', () => {
  it('loses no word and keeps to the width', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), fc.integer({ min: 8, max: 60 }), (text, width) => {
        const lines = breakLines(text, width, { sizePt: 8 });
        expect(lines.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
        for (const line of lines)
          if ([...line].length > 1) expect(textWidth(line, { sizePt: 8 })).toBeLessThanOrEqual(width);
      }),
    );
  });

  it('shortens with an ellipsis', () => {
    const short = shorten('Unterwassermaschinenraum', 20, { sizePt: 8 });
    expect(short).toMatch(/^Unterwasser.*…$/);
    expect(textWidth(short, { sizePt: 8 })).toBeLessThanOrEqual(20);
    expect(shorten('Boot', 20, { sizePt: 8 })).toBe('Boot');
  });
});

describe('panels', () => {
  it.each(CONSOLES.map(profile => [profile.name, profile] as const))(
    '%s shows each used switch once',
    (_, profile) => {
      const switches = SWITCH_NAMES.map((name, index) => ({
        name,
        state: profile.switches[name],
        number: index + 1,
      }));
      const words = { front: 'front', rear: 'back', power: 'power' };
      const { nodes } = drawPanel({ console: profile.name, caption: '', text: '', switches, words }, 57);
      const numbers = nodes.flatMap(({ tagName, children: [first] }) =>
        tagName === 'text' && first?.type === 'text' && /^\d$/.test(first.value) ? [Number(first.value)] : [],
      );
      expect(numbers.toSorted()).toEqual([1, 2, 3, 4, 5]);
    },
  );
});
