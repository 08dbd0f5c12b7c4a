import { Command, CommanderError } from 'commander';
import { COMMANDS } from './commands.js';
import { reasonOf } from './errors.js';
import type { ExitCode } from './exit-code.js';
import { addHelp } from './help.js';
import type { Terminal } from './terminal.js';
import { version } from './version.js';

/** Runs one command line. Never throws: whatever goes wrong is one line for a person, and exit code 2. */
export async function runCommandLine(words: readonly string[], terminal: Terminal): Promise<ExitCode> {
  let code: ExitCode = 0;
  const pieces: string[] = [];
  const program = createProgram(terminal, piece => pieces.push(piece));
  for (const add of COMMANDS) {
    add(program, terminal, ended => {
      code = ended;
    });
  }
  addHelp(program);
  for (const command of program.commands) nameOwnHelp(command);
  try {
    await parse(program, words);
    if (pieces.length > 0) await terminal.out(pieces.join(''));
  } catch (error) {
    if (!(error instanceof CommanderError)) terminal.say(complaint(error));
    return 2;
  }
  return code;
}

/** Throws what went wrong; a printed help or version is no error. */
async function parse(program: Command, words: readonly string[]): Promise<void> {
  try {
    await program.parseAsync(words, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError) || error.exitCode !== 0) throw error;
  }
}

function createProgram(terminal: Terminal, print: (text: string) => void): Command {
  return new Command('leverleaf')
    .description(
      'Compiles the input scheme of a game for the 1977 cartridge console, written as Markdown tables:\nchecks it, and makes its manual pages, overlay sheets, bit-level appendix and the programmer’s files.',
    )
    .version(version(), '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .addHelpText('after', EXAMPLES)
    .showSuggestionAfterError()
    .configureHelp({ sortSubcommands: false, helpWidth: Math.min(terminal.width, 100) })
    .configureOutput({
      writeOut: print,
      writeErr: text => terminal.say(text.trimEnd()),
      // The library puts what was probably meant on a line of its own.
      outputError: (text, write) => write(withHelp(text, '--help')),
    })
    .helpCommand(false)
    .exitOverride();
}

/** A wrong word behind a command is mended by the help of that command. */
function nameOwnHelp(command: Command): void {
  command.configureOutput({
    ...command.configureOutput(),
    outputError: (text, write) => write(withHelp(text, `${command.name()} --help`)),
  });
}

const withHelp = (text: string, words: string): string =>
  `leverleaf: ${oneLine(text).replace(/^error: /, '')} See leverleaf ${words}.`;

const EXAMPLES = `
Examples:
  leverleaf new my-game.md           write a first scheme to start from
  leverleaf check my-game.md         say what would go wrong for the player
  leverleaf build my-game.md         make everything, in a folder of its own under out/
  leverleaf explain same-moment      what a rule looks for, and why

Exit codes: 0 fine, 1 the scheme has errors, 2 the command could not be carried out.
Colours are left out where NO_COLOR is set or the output is no terminal.`;

function oneLine(text: string): string {
  const line = text.trim().replace(/\s*\n\s*/g, ' ');
  return /[.?)]$/.test(line) ? line : `${line}.`;
}

/** Errors whose message is a sentence for the person at the terminal. */
const FOR_PEOPLE: readonly string[] = ['CliError', 'NoBrowserError', 'PrintError'];

function complaint(error: unknown): string {
  if (error instanceof Error && FOR_PEOPLE.includes(error.name))
    return `leverleaf: ${oneLine(error.message)}`;
  return `leverleaf: something unforeseen went wrong: ${reasonOf(error)}`;
}
