import type { Command } from 'commander';
import { nearest } from '../language/spelling.js';
import { CliError } from './errors.js';

/** `leverleaf help COMMAND`: as `leverleaf COMMAND --help`; a command that is not there is an error. */
export function addHelp(program: Command): void {
  program
    .command('help')
    .description('print the help of a command')
    .argument('[command]')
    .action((name: string | undefined) => {
      if (name === undefined) return program.outputHelp();
      const command = program.commands.find(each => each.name() === name);
      if (command !== undefined) return command.outputHelp();
      const meant = nearest(
        name,
        program.commands.map(each => each.name()),
      );
      throw new CliError(
        `There is no command “${name}”${meant === null ? '.' : `: did you mean “${meant}”?`} See leverleaf --help.`,
      );
    });
}
