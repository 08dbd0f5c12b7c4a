/**
 * The browser's PDF as a list of numbered objects, enough of the format (ISO 32000-1, 7.5) to replace or add
 * whole objects without touching the rest. Only files with one classic cross-reference table are read, which
 * is what the browser writes; ten times faster than a load and save with a general library.
 */
export interface PdfFile {
  readonly bytes: Buffer;
  /** Object number → where it stands in `bytes`, in file order. `end` is exclusive. */
  readonly objects: ReadonlyMap<number, Range>;
  readonly root: number;
  readonly info: number;
}

/** Object number → its new text, from its number to `endobj`; undefined takes it out. */
export type PdfChanges = ReadonlyMap<number, string | undefined>;

interface Range {
  readonly start: number;
  readonly end: number;
}

export function readPdf(bytes: Buffer): PdfFile {
  const tail = bytes.toString('latin1', Math.max(0, bytes.length - 1024));
  const tableAt = Number(match(/startxref\s+(\d+)/, tail));
  const table = bytes.toString('latin1', tableAt);
  const offsets = [...table.matchAll(/^(\d{10}) \d{5} ([fn])/gm)]
    .map(([, offset, kind], number) => ({ number, offset: Number(offset), inUse: kind === 'n' }))
    .filter(({ inUse }) => inUse)
    .sort((a, b) => a.offset - b.offset);
  const objects = new Map<number, Range>();
  for (const [index, { number, offset }] of offsets.entries()) {
    objects.set(number, { start: offset, end: offsets[index + 1]?.offset ?? tableAt });
  }
  return {
    bytes,
    objects,
    root: Number(match(/\/Root (\d+) 0 R/, tail)),
    info: Number(match(/\/Info (\d+) 0 R/, tail)),
  };
}

/** The text of an object from its number to `endobj`; a stream's bytes are in it as Latin-1. */
export function readObject(file: PdfFile, number: number): string {
  const range = file.objects.get(number);
  if (!range) throw new Error(`the browser's PDF has no object ${number}.`);
  return file.bytes.toString('latin1', range.start, range.end);
}

/** The numbers of the page objects, in the order of the pages. */
export function pageNumbers(file: PdfFile): readonly number[] {
  const tree = Number(match(/\/Pages (\d+) 0 R/, readObject(file, file.root)));
  const readNode = (number: number): readonly number[] => {
    const kids = /\/Kids \[([^\]]*)\]/.exec(readObject(file, number))?.[1];
    if (kids === undefined) return [number];
    return [...kids.matchAll(/(\d+) 0 R/g)].flatMap(([, kid]) => readNode(Number(kid)));
  };
  return readNode(tree);
}

/** A rectangle of a page, pt. */
export function readBox(
  page: string,
  key: string,
): readonly [left: number, bottom: number, right: number, top: number] {
  const numbers = match(new RegExp(`/${key} \\[([^\\]]*)\\]`), page)
    .trim()
    .split(/\s+/)
    .map(Number);
  const [left = 0, bottom = 0, right = 0, top = 0] = numbers;
  return [left, bottom, right, top];
}

/** A dictionary that stands in an object as the value of `key`, with its brackets. */
export function readDictionary(object: string, key: string): string {
  const start = object.indexOf('<<', object.indexOf(`/${key} <<`));
  let depth = 0;
  for (const { 0: bracket, index } of object.slice(start).matchAll(/<<|>>/g)) {
    depth += bracket === '<<' ? 1 : -1;
    if (depth === 0) return object.slice(start, start + index + 2);
  }
  throw new Error(`the browser's PDF has no ${key} where it should.`);
}

/** The numbers of all objects that some objects refer to, directly or through others. */
export function reachableFrom(file: PdfFile, objects: readonly string[]): ReadonlySet<number> {
  const found = new Set<number>();
  const follow = (object: string): void => {
    const [dictionary = ''] = object.split('stream', 1);
    for (const [, digits] of dictionary.matchAll(/(\d+) 0 R/g)) {
      const number = Number(digits);
      if (found.has(number) || !file.objects.has(number)) continue;
      found.add(number);
      follow(readObject(file, number));
    }
  };
  for (const object of objects) follow(object);
  return found;
}

/** Writes the file anew with some objects replaced, taken out or, under numbers not yet in use, added. */
export function writePdf(file: PdfFile, changes: PdfChanges): Buffer {
  const parts = new Map<number, Buffer>();
  for (const [number, { start, end }] of file.objects) {
    if (!changes.has(number)) parts.set(number, file.bytes.subarray(start, end));
  }
  for (const [number, text] of changes) {
    if (text !== undefined) parts.set(number, Buffer.from(text, 'latin1'));
  }
  return assemble(file, parts, file);
}

/** A file made of objects of its own: number → text from its number to `endobj`. */
export interface NewPdf {
  readonly objects: ReadonlyMap<number, string>;
  readonly root: number;
  readonly info: number;
}

/** Writes a new file with the header of another. */
export function writeNewPdf(source: PdfFile, { objects, root, info }: NewPdf): Buffer {
  const parts = new Map([...objects].map(([number, text]) => [number, Buffer.from(text, 'latin1')]));
  return assemble(source, parts, { root, info });
}

type Trailer = Pick<PdfFile, 'root' | 'info'>;

function assemble(source: PdfFile, objects: ReadonlyMap<number, Buffer>, trailer: Trailer): Buffer {
  const header = source.bytes.subarray(0, source.objects.values().next().value?.start ?? 0);
  const offsets = new Map<number, number>();
  let length = header.length;
  for (const [number, part] of objects) {
    offsets.set(number, length);
    length += part.length;
  }
  const table = Buffer.from(writeTable(offsets, length, trailer), 'latin1');
  return Buffer.concat([header, ...objects.values(), table]);
}

function writeTable(offsets: ReadonlyMap<number, number>, tableAt: number, { root, info }: Trailer): string {
  const size = Math.max(...offsets.keys()) + 1;
  const rows = Array.from({ length: size }, (_, number) => {
    const offset = offsets.get(number);
    return offset === undefined ? '0000000000 65535 f \n' : `${String(offset).padStart(10, '0')} 00000 n \n`;
  });
  const trailer = `<</Size ${size}\n/Root ${root} 0 R\n/Info ${info} 0 R>>`;
  return `xref\n0 ${size}\n${rows.join('')}trailer\n${trailer}\nstartxref\n${tableAt}\n%%EOF\n`;
}

function match(pattern: RegExp, text: string): string {
  const found = pattern.exec(text)?.[1];
  if (found === undefined) throw new Error("the browser's PDF has a form that is not known here.");
  return found;
}
