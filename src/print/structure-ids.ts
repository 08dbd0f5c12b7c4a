import { type PdfChanges, type PdfFile, readObject } from './pdf-file.js';

/** An element of the structure tree that others refer to: a table header, a note. */
interface Identified {
  readonly id: string;
  /** The number of its object. */
  readonly element: number;
}

/**
 * Gives the structure elements that others refer to ids by their place in the document: `node00000001` and
 * up. The browser's own ids come from a counter that depends on what it has done before, and their order from
 * chance. Writes the new ids into the file's bytes, at the same length, and returns the objects of the tree of
 * ids (ISO 32000-1, 14.7.2 and 7.9.6) made anew: one flat node, sorted.
 */
export function numberStructureIds(file: PdfFile): PdfChanges {
  const root = findReference(readObject(file, file.root), 'StructTreeRoot');
  const tree = root === undefined ? undefined : findReference(readObject(file, root), 'IDTree');
  if (tree === undefined) return new Map();
  const nodes: number[] = [];
  const identified = readTree(file, tree, nodes).toSorted((a, b) => a.element - b.element);
  const newIds = new Map(
    identified.map(({ id }, index) => [id, `node${String(index + 1).padStart(8, '0')}`]),
  );
  replaceIds(file.bytes, newIds);
  const names = identified.map(({ id, element }) => `(${newIds.get(id)}) ${element} 0 R`);
  const changes = new Map<number, string | undefined>(nodes.map(number => [number, undefined]));
  return changes.set(tree, `${tree} 0 obj\n<</Names [${names.join(' ')}]>>\nendobj\n`);
}

/** Gathers the names below a node, and into `nodes` the numbers of the nodes themselves. */
function readTree(file: PdfFile, node: number, nodes: number[]): readonly Identified[] {
  nodes.push(node);
  const text = readObject(file, node);
  const kids = /\/Kids \[([^\]]*)\]/.exec(text)?.[1] ?? '';
  const names = /\/Names \[([^\]]*)\]/.exec(text)?.[1] ?? '';
  return [
    ...[...names.matchAll(/\((\w+)\) (\d+) 0 R/g)].map(([, id = '', element]) => ({
      id,
      element: Number(element),
    })),
    ...[...kids.matchAll(/(\d+) 0 R/g)].flatMap(([, kid]) => readTree(file, Number(kid), nodes)),
  ];
}

/** Only ids that are in the tree are touched, and only as whole strings of the same length. */
function replaceIds(bytes: Buffer, newIds: ReadonlyMap<string, string>): void {
  const length = '(node00000001)'.length;
  for (let at = bytes.indexOf('(node'); at >= 0; at = bytes.indexOf('(node', at + 1)) {
    const newId = newIds.get(bytes.toString('latin1', at + 1, at + length - 1));
    if (newId !== undefined && bytes[at + length - 1] === 0x29) bytes.write(newId, at + 1, 'latin1');
  }
}

function findReference(object: string, key: string): number | undefined {
  const found = new RegExp(`/${key} (\\d+) 0 R`).exec(object)?.[1];
  return found === undefined ? undefined : Number(found);
}
