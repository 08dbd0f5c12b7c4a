import type { Rule } from '../rule.js';

export const LANGUAGE_RULES = {
  'unknown-heading': {
    severity: 'error',
    message: '“{heading}” is not a heading of the language.{hint}',
    effect:
      'It begins no section: what stands under it would be ignored, or be read as part of the section above it.',
    waysOut: ['Use one of the headings of the language, or turn the section into `## Manual: TITLE`.'],
    explanation:
      'Everything the compiler acts on stands under a fixed level-2 heading; the game’s title is the only heading of level 1. A heading that is not one of them is reported, so that no part of a scheme is ignored in silence. Headings of level 3 and deeper may stand in `## Manual: TITLE` sections, which are prose, and before the first section, unless they have the words of a section there. Of several files, which are read in name order, only the first has a title.',
    example: '## Acctions\n\n| Action | Say it as |\n| --- | --- |\n| Jump | Jump over the fence |',
  },
  'unknown-column': {
    severity: 'error',
    message: 'The table of {section} has no column “{column}”.{hint}',
    effect: 'What stands in the column would be ignored.',
    waysOut: ['Use a column of the table, or take the column out.'],
    explanation:
      'Each table has its own columns, which may stand in any order. `## Variations` has a column for each setting besides, and `## Consoles` one for each panel switch. A column without a heading is reported at its first cell that says something.',
    example: '## Actions\n\n| Action | Sentence |\n| --- | --- |\n| Jump | Jump over the fence |',
  },
  'missing-column': {
    severity: 'error',
    message: 'The table of {section} lacks the column “{column}”.',
    effect: 'The rows of the table can’t be understood without it.',
    waysOut: ['Add a column “{column}”.'],
    explanation:
      'A column that a table does not need may be left out, but some say what a row is about or what it does; without them there is nothing to compile.',
    example: '## Timing\n\n| Name |\n| --- |\n| long press |',
  },
  'missing-section': {
    severity: 'error',
    message: 'The scheme has no {section}.',
    effect: 'Without it there is no game to check or to print.',
    waysOut: ['Add {section}.'],
    explanation:
      'A scheme needs a title (`# TITLE`), `## Game`, `## Seats`, `## Actions` and at least one `## Mode: NAME`.',
    example: '# Fence Runner\n\n## Game\n\n| Item | Value |\n| --- | --- |\n| Short name | FR |',
  },
  'unknown-name': {
    severity: 'error',
    message: 'There is no {kind} “{name}”.{hint}',
    effect: 'What it was meant to do would not happen in the game.',
    waysOut: ['Use a name that the scheme defines, or define it.'],
    explanation:
      'A name must be one that the scheme defines (an action, a mode, a setting, a seats row, a console, a controller, a control, a named time) or one that the language knows. Words are compared without regard to case, code ticks, emphasis and repeated spaces.',
    example:
      '| Who | Action | Control | Gesture | Then |\n| --- | --- | --- | --- | --- |\n| each | Jump | button | press | go to Nowhere |',
  },
  'duplicate-name': {
    severity: 'error',
    message: 'There are two {kind} called “{name}”.',
    effect: 'Only the first would count, and the other would be ignored.',
    waysOut: ['Give one of the two another name, or take it out.'],
    explanation:
      'Two things of one kind can’t have the same name; names that differ only in case, ticks, emphasis or spaces are the same.',
    example:
      '## Actions\n\n| Action | Say it as |\n| --- | --- |\n| Jump | Jump over the fence |\n| jump | Hop |',
  },
  'bad-value': {
    severity: 'error',
    message: '{where}: {problem}.',
    effect: 'The compiler can’t tell what is meant, so this part of the game would be missing or wrong.',
    waysOut: ['Write it as the description of the language says.'],
    explanation:
      'A cell, fact or row that can’t be understood, that is out of its range, or that contradicts another: a gesture that is none, a time without a unit, a count out of range, a value that its setting does not have, a table where none is read, a table or a fact before the first section, a cell outside its table, a chord of controls that can’t be in one, an `Instead of` that has nothing to hold back.',
    example:
      '## Seats\n\n| Seats | Players | Left port | Right port |\n| --- | --- | --- | --- |\n| Crowd | 5 | joystick | joystick |',
  },
  'unused-accepted': {
    severity: 'error',
    message: 'No finding of {rule} concerns {where}, so there is nothing to accept.',
    effect: 'A reader would believe that a fault is known and kept, though the scheme has none (or another).',
    waysOut: ['Take the row out of `## Accepted`, or correct what it names.'],
    explanation:
      'A row of `## Accepted` stands for a finding that the designer has looked at and keeps. When the finding has gone, or the row names something else, the row must go too: otherwise it would hide the next fault of that kind.',
    example:
      '## Accepted\n\n| Rule | Where | Why |\n| --- | --- | --- |\n| in-passing | Jump; Duck | They are meant to mix |',
  },
} as const satisfies Readonly<Record<string, Rule>>;
