import type { Rule } from '../rule.js';

export const TIMING_RULES = {
  'missed-press': {
    severity: 'warning',
    message: 'Reads are {interval} ms apart, so “{action}” in {mode} can miss a quick press of {control}.',
    effect: 'The player presses and nothing happens.',
    waysOut: [
      'Read the inputs more often (`Reads inputs`).',
      'Turn on the latch (`Button latch: cleared each read`), where the control is a button.',
      'Use `held`, if the player keeps it down anyway.',
    ],
    explanation:
      'A control that no latch holds is seen only if it is down at the moment of a read. The shortest deliberate press lasts about 50 ms (from memory); reads further apart than that can fall on both sides of it. Console switches, sticks, keys and paddle buttons have no latch; the two button inputs have one.',
    example:
      '## Game\n\n| Item | Value |\n| --- | --- |\n| Reads inputs | every 4 frames |\n\n## Mode: Meadow\n\n| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| left | Hop | stick up | press |',
  },
  'wheel-loses-steps': {
    severity: 'warning',
    message: 'The wheel is read every {frames} frames only and can be followed up to {turns}.',
    effect: 'Turned faster, it seems to stand still or to run backwards.',
    waysOut: ['Read the inputs every frame.', 'Use a paddle, or tell the player to turn slowly.'],
    explanation:
      'A wheel gives a two-bit code that steps 16 times in a turn (from memory). The direction of a step can be told only while the wheel moves at most one step between two reads: at 60 reads a second that is 3.75 turns a second, and a half or less of it where frames are skipped.',
    example:
      '## Game\n\n| Item | Value |\n| --- | --- |\n| Reads inputs | every 2 frames |\n\n## Seats\n\n| Seats | Players | Left port | Right port |\n| --- | --- | --- | --- |\n| Solo | 1 | wheel | empty |',
  },
  'too-long-for-a-byte': {
    severity: 'error',
    message: '{time} is {reads}: a counter of one byte holds 255 at most.',
    effect: 'The counter would run over, and the player would wait in vain or for the wrong time.',
    waysOut: ['Make the time shorter.', 'Read the inputs less often (`Reads inputs`).'],
    explanation:
      'Gesture times are counted in reads, in one byte of RAM each: the machine has 128 bytes in all. 255 reads are about 4.25 s on NTSC and 5.1 s on PAL where inputs are read every frame.',
    example:
      '| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| anyone | Wipe the scores | RESET | hold 10 s |',
  },
  'too-quick': {
    severity: 'warning',
    message: '“{gesture}” gives the player {given}; people need about {needed} ms.',
    effect: 'Most players can’t do it reliably.',
    waysOut: ['Give at least {needed} ms.', 'Use another gesture.'],
    explanation:
      'A tap shorter than 100 ms, or a second press within 150 ms of the first, is quicker than most hands are on purpose (both figures from memory). Players will do it by luck only.',
    example:
      '| Who | Action | Control | Gesture |\n| --- | --- | --- | --- |\n| left | Dash | button | double tap within 100 ms |',
  },
  'uneven-standards': {
    severity: 'note',
    message: '{time} takes {durations}.',
    effect: 'Players of one standard wait noticeably longer than those of the other.',
    waysOut: ['Give the time in seconds or ms: it is turned into frames for each standard.'],
    explanation:
      'Frames are shorter on NTSC (59.92 a second) than on PAL and SECAM (49.86 a second). A time given in frames therefore differs by a fifth; the rule notes it where the difference is more than 10 % and more than 50 ms, enough to be felt.',
    example:
      '## Game\n\n| Item | Value |\n| --- | --- |\n| TV standards | NTSC, PAL |\n\n## Timing\n\n| Name | Time |\n| --- | --- |\n| long press | 40 frames |',
  },
} as const satisfies Readonly<Record<string, Rule>>;
