import type { Handoff } from '../model.js';

/** How to run the vectors against a build, in a few sentences; for `vectors.json` and the bit appendix. */
export function vectorsGuide({ names }: Handoff): readonly string[] {
  const p = names.prefix;
  return [
    'Each vector is one test of one mode: put its register values where your build reads the inputs (an emulator’s memory, or RAM in place of the registers), run the build read by read, and compare what fires.',
    `Begin: write each setting’s number where your build keeps it. Give the values of “before” and do one read whose result does not count; then enter the mode (with the generated routine: ${p}READ_…, then ${p}ENTER_…).`,
    'Then do each step as many times as it says: give its values, do one read, and look at what fires. Exactly the symbols under “fires” must fire: no more, no less, at each of those reads.',
    'Where a keypad is plugged in, “rows” gives what differs while that row is driven. Where paddles are, “paddles” gives their positions before the read.',
    'After the read at which a vector ends nothing is promised: it ends where its mode is left. Where what fired has changed a setting, the step gives its new value under “settings”: it holds before that read.',
    'Kinds: “fires” is a shortest way to do the action; “one read short” and “one read long” miss its time by a read (a hold held longer still fires once only); “part missing”, “wrong position” and “wrong player” miss its control; “when false” misses its When; “entered engaged” comes into the mode with the control engaged already; “accepted overlap” shows an overlap that the designer has accepted.',
    'Bits that no control has read as nothing in particular, and your build must not depend on them. Here they are 1 in SWCHA and in D7 of INPT4 and INPT5, 0 in SWCHB, in INPT0 to INPT3 and below D7.',
  ];
}
