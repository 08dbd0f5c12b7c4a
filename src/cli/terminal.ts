import { once } from 'node:events';
import { type Colours, createColours } from '../findings/formats/colours.js';
import { CliError, errorCode, reasonOf } from './errors.js';

/** Where a command writes and reads its surroundings; tests bring their own. */
export interface Terminal {
  /** Results; resolves when they are on their way, throws CliError where they can't be written. */
  out(text: string): Promise<void>;
  /** One line for a person: progress, errors. */
  say(line: string): void;
  readonly colours: Colours;
  /** True where `say` reaches a person at a terminal, so that a line may be written over. */
  readonly isInteractive: boolean;
  /** Columns, at least 40. */
  readonly width: number;
  readonly workingFolder: string;
  /** Resolves when the person asks to stop what would otherwise go on (Ctrl+C). */
  stopped(): Promise<void>;
}

type Environment = Readonly<Record<string, string | undefined>>;

const WIDEST = 110;
const NARROWEST = 40;

/** The terminal of this process. A reader that goes away (`| head`) is no error. */
export function createTerminal(environment: Environment = process.env): Terminal {
  const { stdout, stderr } = process;
  // What can't be written is told by `out`; a line of progress that is lost is no harm.
  stdout.on('error', () => undefined);
  stderr.on('error', () => undefined);
  return {
    async out(text) {
      const written = new Promise<void>((resolve, reject) => {
        stdout.write(text, error => (error && errorCode(error) !== 'EPIPE' ? reject(error) : resolve()));
      });
      const closed = once(stdout, 'close').then(
        () => undefined,
        () => undefined,
      );
      await Promise.race([written, closed]).catch((error: unknown) => {
        throw new CliError(`The result can't be written: ${reasonOf(error)}.`);
      });
    },
    say: line => void stderr.write(`${line}\n`),
    colours: createColours(hasColours(stdout.isTTY === true, environment)),
    isInteractive: stderr.isTTY === true && environment['TERM'] !== 'dumb',
    width: Math.max(NARROWEST, Math.min(WIDEST, stdout.columns || WIDEST)),
    workingFolder: process.cwd(),
    stopped: async () => void (await Promise.race([once(process, 'SIGINT'), once(process, 'SIGTERM')])),
  };
}

/** NO_COLOR (no-color.org) wins over FORCE_COLOR, and both over what the output is. */
export function hasColours(isTerminal: boolean, environment: Environment): boolean {
  if (environment['NO_COLOR']) return false;
  const forced = environment['FORCE_COLOR'];
  if (forced !== undefined && forced !== '' && forced !== '0') return true;
  return isTerminal && environment['TERM'] !== 'dumb';
}
