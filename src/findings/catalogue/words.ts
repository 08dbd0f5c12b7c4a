import type { Rule } from '../rule.js';

export const WORDS_RULES = {
  'no-words': {
    severity: 'warning',
    message: '“{action}” is bound but has no `Say it as`.',
    effect: 'The manual has no sentence for it, so the player reads its bare name.',
    waysOut: ['Write in `Say it as` what the player does or what happens, in one sentence.'],
    explanation:
      'The manual is written from `Say it as`. An action that some mode binds but that has no sentence would be a hole in the manual.',
    example: '## Actions\n\n| Action | Say it as | Short |\n| --- | --- | --- |\n| Jump | | JUMP |',
  },
  'unused-action': {
    severity: 'warning',
    message: '“{action}” is defined, but no mode binds it.',
    effect: 'The player can never do it.',
    waysOut: ['Bind it in a mode.', 'Take it out of `## Actions`.'],
    explanation:
      'An action that no row of any mode names does nothing: it was forgotten in the modes, or is left over from an earlier design.',
    example: '## Actions\n\n| Action | Say it as |\n| --- | --- |\n| Whistle | Call the dog |',
  },
  'unused-setting': {
    severity: 'warning',
    message: 'The game keeps the setting “{setting}”, but no `When`, `Then`, variation or fallback names it.',
    effect: 'Its values make no difference that the scheme knows of, and the player can’t choose one.',
    waysOut: [
      'Let a row step or set it (`Then`), or depend on it (`When`).',
      'Take it out of `## Settings`.',
    ],
    explanation:
      'A setting set by `game` changes through the `Then` column only, and matters where a `When`, a variation or a fallback names it. One that nothing names is left over or was forgotten. Settings set by a switch are not looked at: they are the game’s own to read.',
    example:
      '## Settings\n\n| Setting | Values | Starts as | Set by |\n| --- | --- | --- | --- |\n| Weather | fair, foul | fair | game |',
  },
  'short-too-long': {
    severity: 'error',
    message: 'The short label “{short}” {problem}.',
    effect: 'The label can’t be printed on its key, and the player would not find it.',
    waysOut: ['Write a shorter label.'],
    explanation:
      '`Short` is what stands on a key of an overlay or beside a switch on a panel card: 10 characters at most, and on a keypad no more than its printed key holds at the smallest size that can still be read. Key sizes are those of `## Overlays`.',
    example:
      '## Actions\n\n| Action | Say it as | Short |\n| --- | --- | --- |\n| Raise | Raise the drawbridge | DRAWBRIDGE UP |',
  },
  'symbol-clash': {
    severity: 'error',
    message: '{second} makes the symbol {symbol}, which {first} has already.',
    effect:
      'The programmer’s build would take one for the other, and the player’s action would do something else.',
    waysOut: ['Rename one of them, so that they differ in letters or digits.'],
    explanation:
      'The names handed to the programmer are `SHORTNAME_MODE_ACTION`, with the player and the direction where they are told apart, in capitals; every character that is no letter and no digit becomes `_`, and letters with marks lose them. Names that differ only in such characters, or whose parts run together, make the same symbol. The short name stands before every symbol and must not be the name of a hardware register.',
    example:
      '## Actions\n\n| Action | Say it as |\n| --- | --- |\n| Lay-to | Stop the clock |\n| Lay to | Heave to |',
  },
  'missing-phrase': {
    severity: 'warning',
    message: 'The templates {lack} for the language “{language}”; the English words stand in.',
    effect: 'The player reads a manual in two languages.',
    waysOut: [
      'Add them to `phrases/{language}.md` in the template folder.',
      'Choose a `Language` that the templates have.',
    ],
    explanation:
      'The words around a scheme’s own come from `phrases/TAG.md` in the template folder, by the tag in `Language` or its first parts (`de` for `de-AT`). English, German and French come with the program. A file that lacks a phrase, or a language without a file, is reported and English printed in its place.',
    example: '## Game\n\n| Item | Value |\n| --- | --- |\n| Language | nl |',
  },
} as const satisfies Readonly<Record<string, Rule>>;
