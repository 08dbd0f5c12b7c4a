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
const WIDTH = 150;
const STRIP = { height: 27, note: 4, gap: 3 } as const;
/** A switch that is there, wherever. */
const WORKED: ReadonlySet<string> = new Set(['front', 'rear']);
const PITCH = WIDTH / ORDER.length;
/** What stands below a switch, on one line or two: mm and pt. */
const CAPTION = { width: PITCH - 0.8, height: 6.4, pitch: 3.1, sizePt: 7.5 } as const;
const detail = { width: STROKE.detail } as const;

/**
 * The panel of a console with its switches to work. A switch carries its name (`data-contact`); the lever of one
 * with two positions moves with it. What the console lacks is an empty slot.
 */
export function drawLivePanel({ switches }: ConsoleProfile, phrases: Phrases): Drawing {
  const { say } = phrases;
  const captions = new Map(
    ORDER.map(name => [name, fitOrShorten(switchWords(name, phrases), CAPTION, CAPTION.sizePt)]),
  );
  const more = CAPTION.pitch * (Math.max(...[...captions.values()].map(({ lines }) => lines.length)) - 1);
  const rear = ORDER.filter(name => switches[name].kind === 'rear');
  const isLacking = ORDER.some(name => !WORKED.has(switches[name].kind));
  const height = STRIP.height + more + (isLacking || rear.length > 0 ? STRIP.note : 0);
  const frontTop = rear.length === 0 ? 0 : height + STRIP.gap;
  const place = (name: SwitchName): Point => ({
    x: PITCH * (ORDER.indexOf(name) + 0.5),
    y: rear.includes(name) ? 11 : frontTop + 11,
  });
  return {
    width: WIDTH,
    height: frontTop + height + 0.4,
    nodes: [
      ...(rear.length === 0 ? [] : strip(0, height, say('try rear'))),
      ...strip(frontTop, height, rear.length === 0 ? '' : say('try front')),
      ...ORDER.flatMap(name => drawSwitch(name, switches[name], place(name), captions.get(name), more, say)),
    ],
  };
}

function strip(top: number, height: number, caption: string): readonly Element[] {
  return [
    box({ x: 0.3, y: top + 0.3 }, WIDTH - 0.6, height - 0.6, 3, { fill: 'tint' }),
    ...(caption === ''
      ? []
      : [label(caption, { x: WIDTH - 3, y: top + height - 2 }, { sizePt: 6.5, anchor: 'end' })]),
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
