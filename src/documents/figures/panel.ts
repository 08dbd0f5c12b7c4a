import type { Element } from 'hast';
import { SWITCHES } from '../../hardware/switches.js';
import type { PanelSwitchView, PanelView } from '../manual/console.js';
import { badge, box, type Drawing, label, line, type Point, path, STROKE } from './drawing.js';

/** The order of a panel from left to right; the power switch is drawn but is no business of the game. */
const FRONT_ORDER = ['TV type', 'left difficulty', 'right difficulty', 'SELECT', 'RESET'];
const SLOT = { height: 10, radius: 1.5, width: 5 };
const STRIP_HEIGHT = 22;

/** The panel of a console: what can be reached in front as one strip, what is at the back as another above it. */
export function drawPanel(panel: PanelView, width: number): Drawing {
  const ordered = FRONT_ORDER.flatMap(name => panel.switches.find(each => each.name === name) ?? []);
  const rear = ordered.filter(({ state }) => state.kind === 'rear');
  const front = ordered.filter(({ state }) => state.kind !== 'rear');
  const gap = 2.5;
  const frontTop = rear.length === 0 ? 0 : STRIP_HEIGHT + gap;
  const rearStrip = rear.length === 0 ? [] : drawStrip(rear, { x: 0, y: 0 }, width, panel.words.rear, false);
  return {
    width,
    height: frontTop + STRIP_HEIGHT + 0.3,
    nodes: [...rearStrip, ...drawStrip(front, { x: 0, y: frontTop }, width, panel.words.front, true)],
  };
}

function drawStrip(
  switches: readonly PanelSwitchView[],
  at: Point,
  width: number,
  caption: string,
  hasPower: boolean,
): readonly Element[] {
  const count = switches.length + (!hasPower ? 0 : 1);
  const isWide = hasPower;
  const left = at.x + 0.25;
  const pitch = isWide ? (width - 4) / count : Math.min(16, (width - 4) / count);
  const start = isWide ? left + 1.8 + pitch / 2 : at.x + width / 2 - ((count - 1) * pitch) / 2;
  const centre = (index: number): Point => ({ x: start + index * pitch, y: at.y + 7 });
  const offset = !hasPower ? 0 : 1;
  return [
    box({ x: left, y: at.y + 0.25 }, width - 0.5, STRIP_HEIGHT - 3.6, 2.4, { fill: 'tint' }),
    ...(!hasPower ? [] : drawPower(centre(0))),
    ...switches.flatMap((each, index) => drawSwitch(each, centre(index + offset))),
    label(caption, { x: at.x + width / 2, y: at.y + STRIP_HEIGHT - 0.5 }, { sizePt: 7, anchor: 'middle' }),
  ];
}

const detail = { width: STROKE.detail } as const;

function drawPower(at: Point): readonly Element[] {
  return [
    path(`M${at.x - 1.5} ${at.y - 1.7}A2.3 2.3 0 1 0 ${at.x + 1.5} ${at.y - 1.7}`, detail),
    line({ x: at.x, y: at.y - 3 }, { x: at.x, y: at.y - 0.4 }, detail),
  ];
}

function drawSwitch({ name, state, number }: PanelSwitchView, at: Point): readonly Element[] {
  const isThere = state.kind === 'front' || state.kind === 'rear';
  const mark = number === null ? [] : badge(number, { x: at.x, y: at.y + 8.4 });
  if (!isThere) return [...drawGap(at), ...mark];
  const art = SWITCHES[name].positions.length > 0 ? drawSlide(name, at) : drawPush(at);
  return [...art, ...mark];
}

/** A switch with two positions: a slot with a lever at rest, the positions at its ends. */
function drawSlide(name: PanelSwitchView['name'], at: Point): readonly Element[] {
  const [rest, other] = SWITCHES[name].positions;
  const short = (position: string | undefined) => (position ?? '').slice(0, 1);
  const x = at.x - SLOT.width / 2;
  return [
    box({ x, y: at.y - SLOT.height / 2 }, SLOT.width, SLOT.height, SLOT.radius, { fill: 'paper' }),
    box({ x: x + 0.7, y: at.y + 0.2 }, SLOT.width - 1.4, SLOT.height / 2 - 0.9, 0.7, {
      fill: 'ink',
      width: STROKE.hair,
    }),
    line({ x: x + 1.2, y: at.y - 2.6 }, { x: x + SLOT.width - 1.2, y: at.y - 2.6 }, detail),
    ...(name === 'TV type'
      ? []
      : [
          label(short(other?.name), { x: x - 1.9, y: at.y - 2.4 }, { sizePt: 7, anchor: 'middle' }),
          label(short(rest?.name), { x: x - 1.9, y: at.y + 4.1 }, { sizePt: 7, anchor: 'middle' }),
        ]),
  ];
}

/** A switch that springs back: a push key with an arrow that points into it. */
function drawPush(at: Point): readonly Element[] {
  const tip = { x: at.x, y: at.y + 1.6 };
  return [
    box({ x: at.x - 3.2, y: at.y - 3.8 }, 6.4, 7.6, 3.2, { fill: 'paper' }),
    box({ x: at.x - 2.2, y: at.y - 2.8 }, 4.4, 5.6, 2.2, detail),
    line({ x: at.x, y: at.y - 1.6 }, tip, detail),
    path(`M${at.x - 1} ${at.y + 0.5}L${tip.x} ${tip.y}L${at.x + 1} ${at.y + 0.5}`, detail),
  ];
}

/** Where this console has no such switch. */
function drawGap(at: Point): readonly Element[] {
  return [
    box({ x: at.x - SLOT.width / 2, y: at.y - SLOT.height / 2 }, SLOT.width, SLOT.height, SLOT.radius, {
      ...detail,
      dash: '0.9 0.7',
    }),
    line({ x: at.x - 1.3, y: at.y - 1.3 }, { x: at.x + 1.3, y: at.y + 1.3 }, detail),
    line({ x: at.x + 1.3, y: at.y - 1.3 }, { x: at.x - 1.3, y: at.y + 1.3 }, detail),
  ];
}
