import type { Element } from 'hast';
import { h, table } from '../page/elements.js';
import type { BitsView } from './view.js';

/** What the tables of the modes mean, in a few paragraphs. */
export function howToRead(): readonly Element[] {
  return [
    h('p', [
      'A control is ',
      h('strong', 'engaged'),
      ' while it is pressed, pushed or held down. The column “Engaged” says what its bit reads then. Almost every line of this machine is pulled up and grounded by the control, so engaged is mostly 0.',
    ]),
    h('p', [
      'The tests go on with the next instruction when the control is engaged, and branch to ',
      h('code', 'skip'),
      ' when it is not. “Cycles” gives both: engaged / not engaged (a branch that is taken costs one cycle more, two across a page). A test says whether a control is engaged at this read; the gesture beside it says what to make of that, read by read.',
    ]),
    table({
      className: 'forms',
      caption: 'The forms of a test',
      head: ['Bit and level', 'Test', 'Why'],
      rows: FORMS.map(({ when, code, why }) => [when, h('code', code.join('\n')), why]),
    }),
  ];
}

const FORMS = [
  {
    when: 'D7, engaged is 0',
    code: ['BIT reg', 'BMI skip'],
    why: 'BIT copies bit 7 to N. N is 1 when the control is not engaged, and BMI branches on 1.',
  },
  {
    when: 'D7, engaged is 1',
    code: ['BIT reg', 'BPL skip'],
    why: 'The same, the other way round: BPL branches when N is 0.',
  },
  {
    when: 'D0 to D6, engaged is 0',
    code: ['LDA #mask', 'BIT reg', 'BNE skip'],
    why: 'BIT sets Z when A AND memory is zero, that is when the bit is 0. BNE branches when Z is not set. A keeps the mask.',
  },
  {
    when: 'D0 to D6, engaged is 1',
    code: ['LDA #mask', 'BIT reg', 'BEQ skip'],
    why: 'Z is set when the bit is 0, and that is not engaged: BEQ branches.',
  },
  {
    when: 'D6, a shorter way',
    code: ['BIT reg', 'BVS skip'],
    why: 'BIT copies bit 6 to V: where engaged is 0, BVS does without the mask (BVC where it is 1). Two cycles and two bytes less.',
  },
] as const;

export function gestureSection({ gestures }: BitsView): Element {
  return table({
    className: 'gestures',
    caption: 'The gestures of this game',
    head: ['Gesture', 'Fires'],
    rows: gestures.map(({ gesture, fires }) => [gesture, fires]),
  });
}
