import { type Compiled, compile } from '../../compile.js';
import type { SourceFile } from '../../findings/place.js';
import { countFindings } from '../../findings/summary.js';
import { CliError } from '../errors.js';
import type { ExitCode } from '../exit-code.js';
import { type Narrowing, narrow } from '../narrow.js';
import { readSchemeFiles } from '../read-scheme-files.js';
import type { Terminal } from '../terminal.js';

export interface CheckOptions extends Narrowing {
  readonly format: string;
  readonly coverage?: boolean;
  readonly watch?: boolean;
}

/** `leverleaf check`: prints the findings; 1 where one of them is an error. */
export async function check(scheme: string, options: CheckOptions, terminal: Terminal): Promise<ExitCode> {
  if (!isFormat(options.format)) throw new CliError(`There is no format “${options.format}”.`);
  const write = FORMATS[options.format];
  if (options.coverage && (options.format === 'sarif' || options.format === 'github')) {
    throw new CliError(`--coverage can't be printed as ${options.format}: use --format text or json.`);
  }
  const files = await readSchemeFiles(scheme, terminal.workingFolder);
  const compiled = narrow(compile(files), options);
  await terminal.out(await write({ ...compiled, files }, options, terminal));
  return countFindings(compiled.findings).errors > 0 ? 1 : 0;
}

interface Checked extends Compiled {
  readonly files: readonly SourceFile[];
}

type WriteFormat = (checked: Checked, options: CheckOptions, terminal: Terminal) => Promise<string>;

type Format = 'text' | 'json' | 'sarif' | 'github';

const isFormat = (name: string): name is Format => Object.hasOwn(FORMATS, name);

const NOT_PLAYED =
  'What can be played on which console was not looked at yet: that takes a scheme that can be read whole.\n';

export const FORMATS: Readonly<Record<Format, WriteFormat>> = {
  async text({ scheme, findings, files, coverage }, options, terminal) {
    const { writeText } = await import('../../findings/formats/text.js');
    const text = await writeText(findings, files, {
      colours: terminal.colours,
      width: terminal.width,
      readEvery: scheme?.game.readEvery.value ?? 1,
    });
    if (scheme?.complete !== true) return `${text}${NOT_PLAYED}`;
    if (!options.coverage) return text;
    const { writeMatrix } = await import('../matrix.js');
    return `${writeMatrix(coverage, terminal)}\n${text}`;
  },
  async json(checked) {
    const { writeReportJson } = await import('../../documents/report-json.js');
    return writeReportJson(checked);
  },
  async sarif({ findings }) {
    const [{ writeSarif }, { version }] = await Promise.all([
      import('../../findings/formats/sarif.js'),
      import('../version.js'),
    ]);
    return writeSarif(findings, version());
  },
  async github({ findings }) {
    const { writeGithub } = await import('../../findings/formats/github.js');
    return writeGithub(findings);
  },
};
