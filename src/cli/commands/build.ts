import { stat } from 'node:fs/promises';
import { basename, extname, relative, resolve } from 'node:path';
import { type BuildSet, buildReport, buildSet } from '../../build-set.js';
import { type Compiled, compile } from '../../compile.js';
import type { BuiltFile } from '../../documents/document.js';
import { builtInTemplates } from '../../documents/page/templates.js';
import { visibleText } from '../../findings/formats/terminal-text.js';
import { countFindings, summaryText } from '../../findings/summary.js';
import { folderName } from '../build/folder-name.js';
import { type PrintedSet, printSet } from '../build/print-set.js';
import { openSetFolder } from '../build/set-folder.js';
import { CliError, errorCode, reasonOf } from '../errors.js';
import type { ExitCode } from '../exit-code.js';
import { createProgress, type Progress } from '../progress.js';
import { readSchemeFiles } from '../read-scheme-files.js';
import type { Terminal } from '../terminal.js';

export interface BuildOptions {
  readonly out: string;
  readonly htmlOnly?: boolean;
  readonly templates?: string;
  readonly force?: boolean;
}

/** `leverleaf build`: makes each scheme’s set; ends with the worst that happened to any of them. */
export async function build(
  schemes: readonly string[],
  options: BuildOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const templates = await templatesFolder(options, terminal);
  const jobs = await Promise.all(schemes.map(path => readJob(path, templates, terminal)));
  requireApart(jobs);
  const progress = await createProgress(terminal);
  let worst: ExitCode = 0;
  for (const job of jobs) {
    const code = await buildJob(job, options, progress, terminal);
    if (code > worst) worst = code;
  }
  return worst;
}

interface Job {
  readonly path: string;
  readonly files: Awaited<ReturnType<typeof readSchemeFiles>>;
  readonly templates: string;
  readonly compiled: Compiled;
  /** How messages call it. */
  readonly title: string;
  readonly folder: string;
}

async function readJob(path: string, templates: string, terminal: Terminal): Promise<Job> {
  const files = await readSchemeFiles(path, terminal.workingFolder);
  const compiled = compile(files, { templates });
  const title = compiled.scheme?.title.value ?? '';
  const fileName = basename(resolve(terminal.workingFolder, path));
  return {
    path,
    files,
    templates,
    compiled,
    title: visibleText(title === '' ? fileName : title),
    folder: folderName(title, basename(fileName, extname(fileName))),
  };
}

/** The folder of templates to build with. Throws CliError where the one named can't be read. */
async function templatesFolder({ templates }: BuildOptions, terminal: Terminal): Promise<string> {
  if (templates === undefined) return builtInTemplates;
  const folder = resolve(terminal.workingFolder, templates);
  const info = await stat(folder).catch((error: unknown) => {
    throw new CliError(`The templates ${templates} can't be read: ${reasonOf(error)}.`);
  });
  if (!info.isDirectory()) throw new CliError(`The templates ${templates} are no folder.`);
  return folder;
}

function requireApart(jobs: readonly Job[]): void {
  jobs.forEach((job, index) => {
    const other = jobs.slice(0, index).find(({ folder }) => folder === job.folder);
    if (other === undefined) return;
    throw new CliError(
      `${other.path} and ${job.path} would both be built into ${job.folder}: build one at a time.`,
    );
  });
}

async function buildJob(
  job: Job,
  options: BuildOptions,
  progress: Progress,
  terminal: Terminal,
): Promise<ExitCode> {
  const out = resolve(terminal.workingFolder, options.out);
  try {
    const folder = await openSetFolder(out, job.folder, options.force === true);
    try {
      progress.step(`${job.title}: writing the documents …`);
      const { scheme, findings } = job.compiled;
      const hasErrors = scheme === null || countFindings(findings).errors > 0;
      const settings = { files: job.files, templates: job.templates };
      const set = hasErrors
        ? buildReport(job.compiled, settings)
        : buildSet({ ...job.compiled, scheme }, settings);
      const printed = await printIfWanted(job, set, options, progress);
      const { withoutBrowser } = printed;
      const made = withPrinted(set.files, printed.files);
      const files = [
        ...made,
        ...set.last(
          made.map(({ name }) => name),
          printed.thumbnails,
        ),
      ];
      if (hasErrors) await folder.update(files, printed.files.length > 0 ? [] : ['report.pdf']);
      else await folder.replace(files);
      return await tell(job, { hasErrors, withoutBrowser, path: folder.path }, progress, terminal);
    } finally {
      await folder.close();
    }
  } catch (error) {
    progress.fail(`${job.title}: not built`);
    if (error instanceof CliError) throw error;
    if (errorCode(error) !== null) throw new CliError(`${out} can't be written: ${reasonOf(error)}.`);
    throw error;
  }
}

/** The files of a set, those that printing has revised in place of the first ones. */
function withPrinted(files: readonly BuiltFile[], printed: readonly BuiltFile[]): readonly BuiltFile[] {
  return [...new Map([...files, ...printed].map(file => [file.name, file])).values()];
}

const NOT_PRINTED: PrintedSet = { files: [], thumbnails: [], withoutBrowser: null };

async function printIfWanted(
  job: Job,
  set: BuildSet,
  options: BuildOptions,
  progress: Progress,
): Promise<PrintedSet> {
  if (options.htmlOnly || set.printables.length === 0) return NOT_PRINTED;
  progress.step(`${job.title}: printing …`);
  return printSet(set.printables, job.compiled.scheme?.game.manualPage ?? 'A5', name =>
    progress.step(`${job.title}: printed the ${name} …`),
  );
}

interface Outcome {
  readonly hasErrors: boolean;
  readonly withoutBrowser: string | null;
  readonly path: string;
}

async function tell(job: Job, outcome: Outcome, progress: Progress, terminal: Terminal): Promise<ExitCode> {
  const { hasErrors, withoutBrowser, path } = outcome;
  const sum = summaryText(countFindings(job.compiled.findings));
  if (withoutBrowser !== null) terminal.say(`leverleaf: ${withoutBrowser} ${job.title} has no PDFs.`);
  if (hasErrors) {
    progress.fail(`${job.title}: ${sum}; only the report was made. To see them: leverleaf check ${job.path}`);
  } else {
    progress.done(`${job.title}: built, ${sum}`);
  }
  const shown = relative(terminal.workingFolder, path);
  await terminal.out(`${shown.startsWith('..') ? path : shown}\n`);
  if (hasErrors) return 1;
  return withoutBrowser === null ? 0 : 2;
}
