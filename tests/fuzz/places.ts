import type { Finding } from '../../src/findings/finding.js';
import type { Place, Point, SourceFile } from '../../src/findings/place.js';

/** Tells what is wrong with the places that findings name: reckoned anew from the texts, by counting line ends. */
export function checkPlaces(findings: readonly Finding[], files: readonly SourceFile[]): readonly string[] {
  const textOf = new Map(files.map(({ path, text }) => [path, text]));
  return findings.flatMap(finding =>
    [finding.at, ...(finding.related ?? [])].flatMap(place => {
      const fault = findFault(place, textOf.get(place.file));
      return fault === null ? [] : [`${finding.rule}: ${fault} (${JSON.stringify(place)})`];
    }),
  );
}

function findFault({ range: { start, end } }: Place, text: string | undefined): string | null {
  if (text === undefined) return 'names a file that is none of the scheme’s';
  if (start.offset > end.offset) return 'ends before it begins';
  if (start.offset < 0 || end.offset > text.length) return 'lies outside its file';
  if (!agrees(start, text)) return 'begins at a line and column that are not its offset’s';
  return agrees(end, text) ? null : 'ends at a line and column that are not its offset’s';
}

/** CommonMark's line ends: LF, CR, CR LF. A byte order mark takes no column. */
function agrees({ line, column, offset }: Point, text: string): boolean {
  const before = text.slice(0, offset).replace(/^\ufeff/, '');
  // Between CR and LF the line has not ended yet.
  const ended = text.startsWith('\n', offset) && before.endsWith('\r') ? before.slice(0, -1) : before;
  const lines = ended.split(/\r\n|\n|\r/);
  return line === lines.length && column === (lines.at(-1) ?? '').length + 1 + (before.length - ended.length);
}
