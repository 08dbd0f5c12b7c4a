import type { RootContent } from 'mdast';
import type { Report } from '../findings/report.js';
import { isSameList } from '../memory.js';
import type { Section } from './sections.js';
import type { MovingPart, ParsedContent, ParsePart } from './source-text.js';

/**
 * What a reader keeps from one reading to the next. A thing whose words have not changed stays the same object,
 * moved to where it stands now; so what was worked out for it can be found again.
 */
export interface Keeper {
  /** One with the same text as before comes back as the same nodes. */
  readonly parse: ParsePart;
  /**
   * What a section says: what it said before, where neither it nor what it is read with has changed and nothing was
   * reported about it.
   *
   * @param key one for each reader
   */
  readonly section: <T>(key: string, section: Section | undefined, reading: SectionReading<T>) => T;
  /** The list of before, where the new one has the same items. */
  readonly steady: <T>(key: string, list: readonly T[]) => readonly T[];
  /** Something of the last reading, by key; what is not put back is forgotten. */
  readonly take: <T extends object>(key: string) => T | undefined;
  readonly put: (key: string, thing: object) => void;
  /** Forgets what the reading that ends has not used. */
  readonly finish: () => void;
}

export interface SectionReading<T> {
  readonly report: Report;
  /** Whether what it said before can be said again, as far as it depends on other sections. */
  readonly isStill: (before: T) => boolean;
  readonly read: (report: Report) => T;
  /** Puts what has not changed in its new words in the place of what says the same. */
  readonly adopt?: (before: T, now: T) => void;
}

interface KeptPart extends ParsedContent {
  readonly part: MovingPart;
}

interface KeptSection {
  readonly section: Section | undefined;
  readonly said: unknown;
}

export function createKeeper(parseMarkdown: (text: string) => readonly RootContent[]): Keeper {
  const parts = createShelf<KeptPart>();
  const sections = createShelf<KeptSection>();
  const lists = createShelf<readonly unknown[]>();
  const things = createShelf<object>();
  return {
    parse(source, base, text) {
      const kept = parts.take(text) ?? { part: { source, base }, content: parseMarkdown(text) };
      Object.assign(kept.part, { source, base });
      parts.put(text, kept);
      return kept;
    },
    section<T>(key: string, section: Section | undefined, reading: SectionReading<T>): T {
      const kept = sections.take(key);
      // The key stands for one reader, whose result this is.
      const before = kept?.said as T;
      if (kept !== undefined && isSameSection(kept.section, section) && reading.isStill(before)) {
        sections.put(key, kept);
        return before;
      }
      const watched = watch(reading.report);
      const said = reading.read(watched.report);
      if (watched.isSilent()) {
        if (kept !== undefined) reading.adopt?.(before, said);
        sections.put(key, { section, said });
      } else if (kept !== undefined) sections.put(key, kept);
      return said;
    },
    steady<T>(key: string, list: readonly T[]): readonly T[] {
      const kept = lists.take(key);
      const steady = kept !== undefined && isSameList(kept, list) ? kept : list;
      lists.put(key, steady);
      // Its items are those of `list`.
      return steady as readonly T[];
    },
    // The key stands for one kind of thing.
    take: <T extends object>(key: string) => things.take(key) as T | undefined,
    put: things.put,
    finish() {
      for (const shelf of [parts, sections, lists, things]) shelf.turn();
    },
  };
}

/** Things by key: taken out of those of the last reading, put among those for the next. */
interface Shelf<T> {
  readonly take: (key: string) => T | undefined;
  readonly put: (key: string, thing: T) => void;
  readonly turn: () => void;
}

function createShelf<T>(): Shelf<T> {
  let last = new Map<string, T[]>();
  let next = new Map<string, T[]>();
  return {
    take: key => last.get(key)?.shift(),
    put(key, thing) {
      const things = next.get(key);
      if (things === undefined) next.set(key, [thing]);
      else things.push(thing);
    },
    turn() {
      last = next;
      next = new Map();
    },
  };
}

/** Nodes that were parsed once are the same nodes again. */
function isSameSection(one: Section | undefined, other: Section | undefined): boolean {
  if (one === undefined || other === undefined) return one === other;
  return (
    one.origin.node === other.origin.node &&
    isSameList(
      one.blocks.map(({ node }) => node),
      other.blocks.map(({ node }) => node),
    )
  );
}

/** A report that tells whether anything was reported. */
export interface Watched {
  readonly report: Report;
  readonly isSilent: () => boolean;
}

export function watch(report: Report): Watched {
  let silent = true;
  return {
    report: (...finding) => {
      silent = false;
      report(...finding);
    },
    isSilent: () => silent,
  };
}
