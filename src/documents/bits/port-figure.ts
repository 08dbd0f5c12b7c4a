import type { Element } from 'hast';
import { s } from 'hastscript';
import type { PinView, PortView } from './port-view.js';

/** Sizes in units of the drawing; one is a tenth of a millimetre at its printed width. */
const WIDTH = 620;
const HEIGHT = 240;
const PIN_RADIUS = 30;
const PITCH = 100;
const UPPER = { count: 5, y: 78, startX: 110 };
const LOWER = { count: 4, y: 166, startX: 160 };

/** A 9-pin connector as it is seen from outside: pins 1 to 5 above 6 to 9. A pin in use is filled. */
export function portFigure({ port, pins }: PortView): Element {
  return s(
    'svg',
    {
      class: 'connector',
      viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
      role: 'img',
      'aria-label': describe(port, pins),
    },
    [
      s('path', {
        class: 'shell',
        d: 'M60 18 H560 Q602 18 596 58 L572 188 Q565 224 527 224 H93 Q55 224 48 188 L24 58 Q18 18 60 18 Z',
      }),
      ...pins.map(pin => drawPin(pin)),
    ],
  );
}

function drawPin({ pin, carries, bit }: PinView): Element {
  const row = pin <= UPPER.count ? UPPER : LOWER;
  const x = row.startX + ((pin - 1) % UPPER.count) * PITCH;
  const use = bit === '' ? 'supply' : carries.length > 0 ? 'carries' : 'idle';
  return s('g', { class: `pin ${use}` }, [
    s('circle', { cx: x, cy: row.y, r: PIN_RADIUS }),
    s('text', { x, y: row.y + 16 }, String(pin)),
  ]);
}

function describe(port: string, pins: readonly PinView[]): string {
  const used = pins.filter(({ carries }) => carries.length > 0).map(({ pin }) => pin);
  return used.length === 0
    ? `The ${port} port; no pin is in use.`
    : `The ${port} port; pins in use: ${used.join(', ')}.`;
}
