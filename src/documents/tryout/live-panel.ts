import type { Element } from 'hast';
import { s } from 'hastscript';
import type { ConsoleProfile } from '../../hardware/consoles.js';
import { isTwoPosition, SWITCHES, type SwitchName } from '../../hardware/switches.js';
import { box, type Drawing, label, line, mm, type Point, path, STROKE } from '../figures/drawing.js';
import { type FittedLabel, fitOrShorten } from '../overlays/fit-label.js';
import type { Phrases } from '../phrases.js';
import { switchWords } from '../wording/machine.js';

/** From left to right, as on the panel. */
const ORDER: readonly SwitchName[] = ['TV type', 'left difficulty', 'right difficulty', 'SELECT', 'RESET'];
const STRIP = { height: 27, note: 4, gap: 3 } as const;
/** A switch that is there, wherever. */
const WORKED: ReadonlySet<string> = new Set(['front', 'rear']);
/** What stands below a switch, on one line or two: mm and pt. */
const CAPTION = { height: 6.4, pitch: 3.1, sizePt: 7.5 } as const;
const detail = { width: STROKE.detail } as const;

/** How the switches are laid out: how many in a row, and how far apart, mm. */
export interface PanelLayout {
  readonly inARow: number;
  readonly pitch: number;
}

/** As on the console. */
export const WIDE_PANEL: PanelLayout = { inARow: 5, pitch: 30 };
/** For a small screen, on which the captions of all in a row could not be read. */
export const NARROW_PANEL: PanelLayout = { inARow: 3, pitch: 28 };

/**
 * The panel of a console with its switches to work. A switch carries its name (`data-contact`); the lever of one
 * with two positions moves with it. What the console lacks is an empty slot.
 */
export function drawLivePanel(profile: ConsoleProfile, phrases: Phrases, layout: PanelLayout): Drawing {
  const width = layout.inARow * layout.pitch;
  let height = 0;
  const nodes: Element[] = [];
  for (let first = 0; first < ORDER.length; first += layout.inARow) {
    const names = ORDER.slice(first, first + layout.inARow);
    const row = drawRow(names, profile, height === 0 ? 0 : height + STRIP.gap, layout, phrases);
    nodes.push(...row.nodes);
    height = row.bottom;
  }
  return { width, height: height + 0.4, nodes };
}

/** The switches of one row, those on the back above the others. */
function drawRow(
  names: readonly SwitchName[],
  { switches }: ConsoleProfile,
  top: number,
  { inARow, pitch }: PanelLayout,
  phrases: Phrases,
): { readonly nodes: readonly Element[]; readonly bottom: number } {
  const { say } = phrases;
  const room = { width: pitch - 0.8, height: CAPTION.height };
  const captions = new Map(
    names.map(name => [name, fitOrShorten(switchWords(name, phrases), room, CAPTION.sizePt)]),
  );
  const more = CAPTION.pitch * (Math.max(...[...captions.values()].map(({ lines }) => lines.length)) - 1);
  const rear = names.filter(name => switches[name].kind === 'rear');
  const isLacking = names.some(name => !WORKED.has(switches[name].kind));
  const height = STRIP.height + more + (isLacking || rear.length > 0 ? STRIP.note : 0);
  const hasFront = rear.length < names.length;
  const frontTop = rear.length === 0 ? top : top + height + STRIP.gap;
  const place = (name: SwitchName): Point => ({
    x: pitch * (names.indexOf(name) + 0.5),
    y: (rear.includes(name) ? top : frontTop) + 11,
  });
  const strip = (at: number, caption: string) => drawStrip(at, inARow * pitch, height, caption);
  return {
    bottom: hasFront ? frontTop + height : top + height,
    nodes: [
      ...(rear.length === 0 ? [] : strip(top, say('try rear'))),
      ...(hasFront ? strip(frontTop, rear.length === 0 ? '' : say('try front')) : []),
      ...names.flatMap(name => drawSwitch(name, switches[name], place(name), captions.get(name), more, say)),
    ],
  };
}

function drawStrip(top: number, width: number, height: number, caption: string): readonly Element[] {
  return [
    box({ x: 0.3, y: top + 0.3 }, width - 0.6, height - 0.6, 3, { fill: 'tint' }),
    ...(caption === ''
      ? []
      : [label(caption, { x: width - 3, y: top + height - 2 }, { sizePt: 6.5, anchor: 'end' })]),
  ];
}

function drawSwitch(
  name: SwitchName,
  state: ConsoleProfile['switches'][SwitchName],
  at: Point,
  words: FittedLabel | undefined,
  more: number,
  say: Phrases['say'],
): readonly Element[] {
  const caption = (words?.lines ?? []).map((text, index) =>
    label(
      text,
      { x: at.x, y: at.y + 13 + index * CAPTION.pitch },
      { sizePt: words?.sizePt ?? 7, bold: true, anchor: 'middle' },
    ),
  );
  if (!WORKED.has(state.kind)) {
    const note =
      state.kind === 'fixed' ? say('try always', { position: state.position }) : say('try not there');
    return [
      box({ x: at.x - 3.4, y: at.y - 8 }, 6.8, 16, 2, { ...detail, dash: '0.9 0.7' }),
      ...caption,
      label(note, { x: at.x, y: at.y + 16.6 + more }, { sizePt: 7, anchor: 'middle' }),
    ];
  }
  const art = isTwoPosition(name) ? slide(name, at) : push(at);
  const reach = {
    className: ['part'],
    x: mm(at.x - 10),
    y: mm(at.y - 9.5),
    width: '20',
    height: '19',
    rx: '3',
  };
  return [s('g', { className: ['switch'], dataContact: name }, [...art, s('rect', reach)]), ...caption];
}

/** The position at rest is below, the other above; the words stand beside them. */
function slide(name: SwitchName, at: Point): readonly Element[] {
  const [rest, other] = SWITCHES[name].positions;
  const word = (text: string | undefined, y: number) =>
    label(text ?? '', { x: at.x + 4.6, y }, { sizePt: 7 });
  return [
    box({ x: at.x - 3.4, y: at.y - 8 }, 6.8, 16, 2, { fill: 'paper' }),
    s('g', { className: ['lever'] }, [
      box({ x: at.x - 2.5, y: at.y + 0.4 }, 5, 6.7, 1, { fill: 'ink', width: STROKE.hair }),
      line({ x: at.x - 1.4, y: at.y + 3.7 }, { x: at.x + 1.4, y: at.y + 3.7 }, { width: 0 }),
    ]),
    word(other?.name, at.y - 3),
    word(rest?.name, at.y + 5),
  ];
}

function push(at: Point): readonly Element[] {
  const tip = { x: at.x, y: at.y + 2.2 };
  return [
    box({ x: at.x - 5, y: at.y - 6.5 }, 10, 13, 5, { fill: 'paper' }),
    s('g', { className: ['cap'] }, [
      box({ x: at.x - 3.6, y: at.y - 5.1 }, 7.2, 10.2, 3.6, { ...detail, fill: 'paper' }),
      line({ x: at.x, y: at.y - 2.2 }, tip, detail),
      path(`M${at.x - 1.4} ${at.y + 0.8}L${tip.x} ${tip.y}L${at.x + 1.4} ${at.y + 0.8}`, detail),
    ]),
  ];
}
