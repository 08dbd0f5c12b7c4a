import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { createRangeTest, type FontFamily, type FontFile, listFontFiles } from './font-files.js';

/** How text is set. */
export interface TextStyle {
  /** `text` if left out. */
  readonly family?: FontFamily;
  /** 400 if left out. */
  readonly weight?: 400 | 700;
  /** Upright if left out. The monospace has no italic and stays upright. */
  readonly italic?: boolean;
  /** pt */
  readonly sizePt: number;
}

/** The little of fontkit that is used here. */
interface Font {
  readonly unitsPerEm: number;
  hasGlyphForCodePoint(codePoint: number): boolean;
  layout(text: string): { readonly advanceWidth: number };
}

interface LoadedFile {
  readonly file: FontFile;
  covers(codePoint: number): boolean;
  font(): Font;
}

const require = createRequire(import.meta.url);
const loaded = new Map<string, readonly LoadedFile[]>();

/**
 * The width of a line of text in pt as it comes out in print, kerning included. Screen widths differ; these
 * are the very fonts that are printed. A character no font has counts as wide as the size.
 */
export function measureText(text: string, style: TextStyle): number {
  const fonts = fontsFor(style);
  let emWidth = 0;
  for (const run of splitRuns(text, fonts)) {
    const font = run.font;
    emWidth += font ? font.layout(run.text).advanceWidth / font.unitsPerEm : [...run.text].length;
  }
  return emWidth * style.sizePt;
}

/** The characters of a text that none of the fonts can draw, each once, in their order. */
export function missingCharacters(text: string, family: FontFamily = 'text'): readonly string[] {
  const fonts = fontsFor({ family, sizePt: 1 });
  const isMissing = (character: string) => !/\s|\p{Cc}|\p{Cf}/u.test(character) && !fontOf(character, fonts);
  return [...new Set(text)].filter(isMissing);
}

interface Run {
  readonly font: Font | undefined;
  readonly text: string;
}

/** Splits where the font file changes, as the browser does; a combining mark stays with its letter. */
function splitRuns(text: string, fonts: readonly LoadedFile[]): readonly Run[] {
  const runs: { font: Font | undefined; text: string }[] = [];
  for (const character of text) {
    const last = runs.at(-1);
    if (last && /\p{M}/u.test(character)) {
      last.text += character;
      continue;
    }
    const font = fontOf(character, fonts);
    if (last && last.font === font) last.text += character;
    else runs.push({ font, text: character });
  }
  return runs;
}

function fontOf(character: string, fonts: readonly LoadedFile[]): Font | undefined {
  const codePoint = character.codePointAt(0) ?? 0;
  return fonts
    .find(({ covers, font }) => covers(codePoint) && font().hasGlyphForCodePoint(codePoint))
    ?.font();
}

/** The files of a style in the order CSS would try them: the family before the symbols, the last declared first. */
function fontsFor({ family = 'text', weight = 400, italic = false }: TextStyle): readonly LoadedFile[] {
  const isItalic = italic && family === 'text';
  const key = `${family} ${weight} ${isItalic}`;
  const known = loaded.get(key);
  if (known) return known;
  const own = family === 'text' ? 'Leverleaf Text' : 'Leverleaf Mono';
  const ofWeight = listFontFiles()
    .filter(file => file.weight === weight)
    .toReversed();
  const files = [
    ...ofWeight.filter(file => file.cssFamily === own && file.isItalic === isItalic),
    ...ofWeight.filter(file => file.cssFamily === 'Leverleaf Symbols'),
  ].map(loadLazily);
  loaded.set(key, files);
  return files;
}

function loadLazily(file: FontFile): LoadedFile {
  let font: Font | undefined;
  return {
    file,
    covers: createRangeTest(file.unicodeRange),
    font() {
      font ??= openFont(file.path);
      return font;
    },
  };
}

/** fontkit is loaded with the first measured text; nothing else pays for it. */
function openFont(path: string): Font {
  const fontkit: { create(bytes: Buffer): Font } = require('fontkit');
  return fontkit.create(readFileSync(path));
}
