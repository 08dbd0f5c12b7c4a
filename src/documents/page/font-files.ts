import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** The families a document may name; both come from npm packages under the SIL Open Font License 1.1. */
export type FontFamily = 'text' | 'mono';

/** One font file: a style of a family for some of the characters. */
export interface FontFile {
  /** The family as style sheets call it. It is no installed font's name, so that none can take its place. */
  readonly cssFamily: string;
  readonly weight: 400 | 700;
  readonly isItalic: boolean;
  /** The characters it is used for, as CSS `unicode-range` writes them: `U+0000-00FF,U+0131`. */
  readonly unicodeRange: string;
  /** Path of the woff2 file. */
  readonly path: string;
}

/**
 * A humanist text face and the monospace drawn to go with it, chosen by looking at 9 pt and 7 pt prints: open
 * forms, letters told apart (`Il1`, `rn m`), and of the candidates the only pair whose zero is slashed from the
 * start. The monospace has no italic. Symbols (arrows, marks) come from a third package.
 */
const packages = {
  text: { package: '@fontsource/noto-sans', file: 'noto-sans', css: 'Leverleaf Text', hasItalic: true },
  mono: {
    package: '@fontsource/noto-sans-mono',
    file: 'noto-sans-mono',
    css: 'Leverleaf Mono',
    hasItalic: false,
  },
  symbols: {
    package: '@fontsource/noto-sans-symbols',
    file: 'noto-sans-symbols',
    css: 'Leverleaf Symbols',
    hasItalic: false,
  },
} as const;

type PackageName = keyof typeof packages;

/**
 * The subsets used, the commonest last: of the faces that hold a character CSS takes the last one declared.
 * The text packages claim two arrows for `latin` that they do not draw; the symbols package has them.
 */
const textSubsets = ['cyrillic-ext', 'cyrillic', 'greek-ext', 'greek', 'vietnamese', 'latin-ext', 'latin'];
const symbolRanges: readonly (readonly [subset: string, range: string | undefined])[] = [
  ['symbols', undefined],
  ['latin', 'U+2191,U+2193'],
];

/** The CSS `font-family` values to set text in. */
export const fontStack: Readonly<Record<FontFamily, string>> = {
  text: "'Leverleaf Text', 'Leverleaf Symbols', sans-serif",
  mono: "'Leverleaf Mono', 'Leverleaf Symbols', monospace",
};

const require = createRequire(import.meta.url);

let files: readonly FontFile[] | undefined;

/** All font files, in the order they must be declared in. */
export function listFontFiles(): readonly FontFile[] {
  files ??= [...listPackage('symbols'), ...listPackage('text'), ...listPackage('mono')];
  return files;
}

function listPackage(name: PackageName): readonly FontFile[] {
  const chosen = packages[name];
  const ranges = readRanges(chosen.package);
  const subsets =
    name === 'symbols' ? symbolRanges : textSubsets.map((subset): [string, undefined] => [subset, undefined]);
  const styles = chosen.hasItalic ? (['normal', 'italic'] as const) : (['normal'] as const);
  return subsets.flatMap(([subset, range]) =>
    ([400, 700] as const).flatMap(weight =>
      styles.map(style => ({
        cssFamily: chosen.css,
        weight,
        isItalic: style === 'italic',
        unicodeRange: range ?? ranges[subset] ?? '',
        path: require.resolve(`${chosen.package}/files/${chosen.file}-${subset}-${weight}-${style}.woff2`),
      })),
    ),
  );
}

function readRanges(packageName: string): Readonly<Record<string, string>> {
  return JSON.parse(readFileSync(require.resolve(`${packageName}/unicode.json`), 'utf8'));
}

/** Whether a `unicode-range` holds a code point. */
export function createRangeTest(unicodeRange: string): (codePoint: number) => boolean {
  const ranges = unicodeRange.split(',').map(range => {
    const [from = '', to = from] = range.trim().replace(/^U\+/, '').split('-');
    return [Number.parseInt(from, 16), Number.parseInt(to, 16)] as const;
  });
  return codePoint => ranges.some(([from, to]) => codePoint >= from && codePoint <= to);
}
