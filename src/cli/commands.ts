import { type Command, Option } from 'commander';
import type { ExitCode } from './exit-code.js';
import type { Terminal } from './terminal.js';

/** Adds one command to the program; `end` hears the code that it ends with. The work itself is imported when it is called. */
type AddCommand = (program: Command, terminal: Terminal, end: (code: ExitCode) => void) => void;

const SCHEME = 'a scheme: a .md file, or a folder of them';

const addBuild: AddCommand = (program, terminal, end) => {
  program
    .command('build')
    .description('make the manual, overlay sheets, appendix, report and the programmer’s files')
    .argument('<scheme...>', SCHEME)
    .option('-o, --out <folder>', 'where the sets go, each in a folder of its own', 'out')
    .option('--html-only', 'make no PDF: needs no browser')
    .option('--templates <folder>', 'styles, page furniture and phrases of your own')
    .option('--force', 'replace a folder that no build has made, and take over from a build that hangs')
    .addHelpText(
      'after',
      '\nA set takes the place of the one before only when it is complete. A scheme with errors gets its report only.\nPDFs are printed with an installed Chrome or Chromium; LEVERLEAF_BROWSER names another.\n\nExample:\n  leverleaf build my-game.md --out print',
    )
    .action(async (schemes: string[], options: { out: string }) => {
      const { build } = await import('./commands/build.js');
      end(await build(schemes, options, terminal));
    });
};

const addCheck: AddCommand = (program, terminal, end) => {
  program
    .command('check')
    .description('say what would go wrong for the player, and what to do about it')
    .argument('<scheme>', SCHEME)
    .addOption(
      new Option('-f, --format <format>', 'how to print it: for people, or for other programs')
        .choices(['text', 'json', 'sarif', 'github'])
        .default('text'),
    )
    .option('--coverage', 'also print the matrix of what plays where (json always has it)')
    .option('-w, --watch', 'check again whenever a file changes, until Ctrl+C (text only)')
    .option('--console <name>', 'look at one console profile only')
    .option('--seats <name>', 'look at one seats row only')
    .option('--standard <name>', 'look at one TV standard only')
    .addHelpText(
      'after',
      '\nExamples:\n  leverleaf check my-game.md\n  leverleaf check my-game.md --watch\n  leverleaf check my-game.md --coverage --console no-difficulty\n  leverleaf check my-game.md --format sarif > findings.sarif',
    )
    .action(async (scheme: string, options: { format: string; watch?: boolean }) => {
      const { check } = await import('./commands/check.js');
      if (options.watch !== true) return end(await check(scheme, options, terminal));
      const { watchScheme } = await import('./commands/watch.js');
      end(await watchScheme(scheme, options, terminal));
    });
};

const addExplain: AddCommand = (program, terminal, end) => {
  program
    .command('explain')
    .description('say what a rule looks for, and why; without a rule, list them all')
    .argument('[rule]', 'the rule’s id, as a finding names it')
    .addHelpText('after', '\nExample:\n  leverleaf explain ghost-chord')
    .action(async (rule: string | undefined) => {
      const { explain } = await import('./commands/explain.js');
      end(await explain(rule, terminal));
    });
};

const addNew: AddCommand = (program, terminal, end) => {
  program
    .command('new')
    .description('write a small scheme to start from; it compiles without a finding')
    .argument('[file]', 'the file to write; one that is there is never written over', 'my-game.md')
    .action(async (file: string) => {
      const { writeStarter } = await import('./commands/new.js');
      end(await writeStarter(file, terminal));
    });
};

const addRecipe: AddCommand = (program, terminal, end) => {
  program
    .command('recipe')
    .description('say how a player gets to a mode or a variation, step by step from power-on')
    .argument('<scheme>', SCHEME)
    .argument('<mode>', 'a mode or a variation of the scheme')
    .option('--console <name>', 'on one console profile only')
    .option('--seats <name>', 'for one seats row only')
    .option('--standard <name>', 'for one TV standard only')
    .addHelpText('after', '\nExample:\n  leverleaf recipe my-game.md Paused --console four-switch')
    .action(async (scheme: string, mode: string, options: object) => {
      const { recipe } = await import('./commands/recipe.js');
      end(await recipe(scheme, mode, options, terminal));
    });
};

const addTrace: AddCommand = (program, terminal, end) => {
  program
    .command('trace')
    .description('tell, read by read, where a log of a running build and the scheme differ')
    .argument('<scheme>', SCHEME)
    .argument('<log>', 'register values read by read: CSV or JSON lines')
    .option(
      '--console <name>',
      'the console profile the log is from; if left out, as the log says, else the first of the scheme',
    )
    .option(
      '--seats <name>',
      'the seats row the log is from; if left out, as the log says, else the first of the scheme',
    )
    .option(
      '--standard <name>',
      'the TV standard the log is from; if left out, as the log says, else the first of the scheme',
    )
    .addHelpText(
      'after',
      `
The log has an entry for each read from power-on: the registers SWCHA, SWCHB and INPT0 to INPT5 ($0F, 0x0F or
15; one that is left out stays as it was) and fires, the symbols or names of what the build did, joined by ";".
It may also have mode, settings, times, rows and paddles as in vectors.csv, and in its first entry console,
seats and standard. In CSV the first line names the columns; else each line is a JSON object.

Example:
  leverleaf trace my-game.md session.csv --seats Duet --standard PAL`,
    )
    .action(async (scheme: string, log: string, options: object) => {
      const { trace } = await import('./commands/trace.js');
      end(await trace(scheme, log, options, terminal));
    });
};

/** In the order of the help. */
export const COMMANDS: readonly AddCommand[] = [addNew, addCheck, addBuild, addExplain, addRecipe, addTrace];
