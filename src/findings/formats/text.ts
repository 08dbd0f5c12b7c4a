import { RULES } from '../catalogue.js';
import type { Finding } from '../finding.js';
import type { Place, SourceFile } from '../place.js';
import { fillText } from '../rule.js';
import { countFindings, summaryText } from '../summary.js';
import type { Colours } from './colours.js';
import { type Cut, cutLine, layOutLine } from './source-line.js';
import { createWidthOf, visibleText, type WidthOf, wrapText } from './terminal-text.js';
import { timelineLines } from './timeline.js';

export interface TextOptions {
  readonly colours: Colours;
  /** Columns to wrap at. */
  readonly width: number;
  /** Frames between two reads of the scheme; 1 if left out. */
  readonly readEvery?: number;
}

/** Columns before the text of a source line, at most. */
const GUTTER = 12;

/** The findings for people: source line, marked words, what it does, ways out; at the end the sum. */
export async function writeText(
  findings: readonly Finding[],
  files: readonly SourceFile[],
  options: TextOptions,
): Promise<string> {
  const cuts = findings.map(({ at }) => cutLine(files, at, options.width - GUTTER));
  const widthOf = await createWidthOf(cuts.map(cut => (cut === null ? '' : cut.before + cut.words)));
  const blocks = findings.map((finding, index) =>
    finding.severity === 'accepted'
      ? acceptedLines(finding, options)
      : findingLines(finding, cuts[index] ?? null, widthOf, options),
  );
  const sum = summaryText(countFindings(findings));
  return `${[...blocks.map(lines => lines.join('\n')), sum].join('\n\n')}\n`;
}

function findingLines(
  finding: Finding,
  cut: Cut | null,
  widthOf: WidthOf,
  options: TextOptions,
): readonly string[] {
  const { colours, width } = options;
  const effect = fillText(RULES[finding.rule].effect, {});
  return [
    headLine(finding, colours),
    ...wrapped(finding.message, '  ', '  ', width).map(colours.bold),
    ...(cut === null ? [] : sourceLines(cut, finding, widthOf, colours)),
    ...labelled('effect', [effect], width, colours),
    ...labelled('way out', finding.waysOut, width, colours),
    ...labelled('where', concerned(finding), width, colours),
    ...labelled(
      'see also',
      (finding.related ?? []).map(related => `${placeText(related)} ${related.message}`),
      width,
      colours,
    ),
    ...witnessLines(finding, options),
  ];
}

function headLine(finding: Finding, colours: Colours): string {
  const paint = { error: colours.red, warning: colours.yellow, note: colours.cyan, accepted: colours.dim };
  const { severity, rule } = finding;
  return `${paint[severity](`${severity} ${rule}`)} ${colours.dim(placeText(finding.at))}`;
}

function placeText({ file, range }: Place): string {
  return visibleText(`${file}:${range.start.line}:${range.start.column}`);
}

function sourceLines(cut: Cut, finding: Finding, widthOf: WidthOf, colours: Colours): readonly string[] {
  const { line, text, indent, marked } = layOutLine(cut, finding.at.range.start.line, widthOf);
  const number = String(line);
  const gutter = ' '.repeat(number.length);
  const mark = colours.red('^'.repeat(marked));
  return [
    `  ${colours.dim(`${gutter} |`)}`,
    `  ${colours.dim(`${number} |`)} ${text}`.trimEnd(),
    `  ${colours.dim(`${gutter} |`)} ${' '.repeat(indent)}${mark}`,
  ];
}

/** Which seats rows, consoles, standards and so on, where a message does not say it. */
function concerned({ seats, consoles, standards, variation }: Finding): readonly string[] {
  const parts = [
    ...(seats?.length ? [`seats ${seats.join(', ')}`] : []),
    ...(consoles?.length ? [`consoles ${consoles.join(', ')}`] : []),
    ...(standards?.length ? [standards.join(', ')] : []),
    ...(variation === undefined ? [] : [`variation ${variation}`]),
  ];
  return parts.length === 0 ? [] : [parts.join('; ')];
}

const LABEL_WIDTH = 10;

function labelled(
  label: string,
  texts: readonly string[],
  width: number,
  colours: Colours,
): readonly string[] {
  return texts.flatMap((text, index) => {
    const name = index === 0 ? label : label === 'way out' ? 'or' : '';
    const lines = wrapped(text, '', '', width - LABEL_WIDTH - 2);
    return lines.map((line, row) =>
      `  ${colours.dim((row === 0 ? name : '').padEnd(LABEL_WIDTH))}${line}`.trimEnd(),
    );
  });
}

function witnessLines({ witness }: Finding, { colours, readEvery = 1 }: TextOptions): readonly string[] {
  if (witness === undefined) return [];
  return [
    `  ${colours.dim(`shown on ${witness.standard}, held down at each read → what happens:`)}`,
    ...timelineLines(witness, readEvery).map(line => `    ${visibleText(line)}`),
  ];
}

function acceptedLines(finding: Finding, { colours, width }: TextOptions): readonly string[] {
  return [
    headLine(finding, colours),
    ...wrapped(finding.message, '  ', '  ', width),
    ...labelled('accepted', [finding.why ?? 'no reason given'], width, colours),
  ];
}

function wrapped(text: string, first: string, rest: string, width: number): readonly string[] {
  return wrapText(visibleText(text.replace(/\s+/g, ' ')), Math.max(20, width - rest.length)).map(
    (line, index) => (index === 0 ? first : rest) + line,
  );
}
