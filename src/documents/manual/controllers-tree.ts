import type { Element, ElementContent } from 'hast';
import { type Call, drawCallOuts, longestWord } from '../figures/call-outs.js';
import { drawController, spotKey } from '../figures/controller-art.js';
import { type ControlDrawing, type Drawing, picture } from '../figures/drawing.js';
import { figure, h, table } from '../page/elements.js';
import type { Speech } from '../wording/gestures.js';
import { type CallOut, type ControllerView, callLines } from './controllers.js';

/** Room for a controller's figure on the page, mm. */
export interface FigureRoom {
  readonly width: number;
  readonly height: number;
}

/** How much the call-outs say: sentences where there is room, else names, else the control alone. */
const DETAILS = ['words', 'names', 'labels'] as const;
type Detail = (typeof DETAILS)[number];

/** A drawing with call-outs; where even names have no room beside it, a table under it says what each control does. */
export function controllerTree(
  view: ControllerView,
  room: FigureRoom,
  speech: Speech,
): readonly ElementContent[] {
  const { detail, drawing } = fittingDrawing(view, room, speech);
  const drawn = figure(picture(drawing, view.text), [], 'controller');
  const head = h('h3', view.caption);
  return detail === 'labels' ? [head, drawn, usesTable(view.calls, speech)] : [head, drawn];
}

function fittingDrawing(
  { calls, controller }: ControllerView,
  room: FigureRoom,
  speech: Speech,
): { readonly detail: Detail; readonly drawing: Drawing } {
  const art = drawController(controller);
  const draw = (detail: Detail) => {
    const said = calls.map(call => sayCall(call, detail, speech));
    const scale = scaleFor(art, said, room.width);
    return drawCallOuts(drawController(controller, scale), said, { width: room.width, scale });
  };
  for (const detail of DETAILS) {
    const drawing = draw(detail);
    if (drawing.height <= room.height) return { detail, drawing };
  }
  return { detail: 'labels', drawing: draw('labels') };
}

/** The art as large as leaves the text its longest word and at least a quarter of the width on each side. */
function scaleFor(art: ControlDrawing, calls: readonly Call[], width: number): number {
  const sides = new Set(calls.flatMap(({ spots }) => spots.slice(0, 1).map(key => art.spots.get(key)?.side)))
    .size;
  const column = Math.max(width * 0.27, Math.min(longestWord(calls), width * 0.34));
  const forArt = width - sides * (column + 7);
  return Math.min(1, Math.max(0.55, forArt / art.width));
}

function sayCall(call: CallOut, detail: Detail, { phrases }: Speech): Call {
  const { controls, label } = call;
  return {
    spots: controls.map(({ name, seat }) => spotKey(name, seat)),
    head: label,
    lines: detail === 'labels' ? [] : callLines(call, phrases.say, detail === 'names'),
  };
}

function usesTable(calls: readonly CallOut[], { phrases }: Speech): Element {
  return table({
    className: 'uses',
    head: [phrases.say('column do'), phrases.say('column happens')],
    rows: calls.map(call => [call.label, callLines(call, phrases.say).map(line => h('div', line))]),
  });
}
