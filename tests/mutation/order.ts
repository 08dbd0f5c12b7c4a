/** A test as it ran without any mutant. */
export interface KnownTest {
  readonly id: string;
  /** The test file’s path from the root. */
  readonly path: string;
  /** Null for a file that already runs the sources while it is read: all its tests count as one. */
  readonly name: string | null;
  /** What it took, in ms. */
  readonly time: number;
}

/** Which tests killed mutants of a source, the latest last. */
export type Kills = Map<string, string[]>;

/** What killed a mutant’s neighbours most recently comes first, then what is quick. */
export function orderTests(tests: readonly KnownTest[], kills: Kills, source: string): readonly KnownTest[] {
  const rank = new Map((kills.get(source) ?? []).map((id, index) => [id, index]));
  const rankOf = ({ id }: KnownTest) => rank.get(id) ?? -1;
  return tests.toSorted((a, b) => rankOf(b) - rankOf(a) || a.time - b.time);
}

export function noteKill(kills: Kills, source: string, id: string): void {
  const others = (kills.get(source) ?? []).filter(other => other !== id);
  kills.set(source, [...others, id]);
}
