/** A column of a table; a table without a needed one can't be read. */
export interface Column {
  readonly name: string;
  readonly needed: boolean;
}

/** What a level-2 heading of the language holds. */
export interface SectionLayout {
  /** As it is written: `Game`, `Mode`. */
  readonly heading: string;
  /** `none`: fixed words; `name`: the heading goes on with `: NAME`. */
  readonly title: 'none' | 'name';
  readonly needed: boolean;
  readonly holds: 'table' | 'facts and table' | 'prose';
  readonly columns: readonly Column[];
}

const needs = (name: string): Column => ({ name, needed: true });
const may = (name: string): Column => ({ name, needed: false });
const table = (heading: string, needed: boolean, columns: readonly Column[]): SectionLayout => ({
  heading,
  title: 'none',
  needed,
  holds: 'table',
  columns,
});

/** Every heading of the language, in the order of its description. */
export const LAYOUTS = {
  game: table('Game', true, [needs('Item'), needs('Value')]),
  seats: table('Seats', true, [needs('Seats'), needs('Players'), needs('Left port'), needs('Right port')]),
  settings: table('Settings', false, [
    needs('Setting'),
    needs('Values'),
    needs('Starts as'),
    needs('Set by'),
  ]),
  actions: table('Actions', true, [needs('Action'), may('Say it as'), may('Short'), may('Need')]),
  mode: {
    heading: 'Mode',
    title: 'name',
    needed: true,
    holds: 'facts and table',
    columns: [
      needs('Who'),
      needs('Action'),
      may('Control'),
      may('Gesture'),
      may('When'),
      may('Then'),
      may('Instead of'),
      may('Along with'),
    ],
  },
  switches: table('Switches', false, [needs('Switch'), may('Position or use'), needs('Say it as')]),
  variations: table('Variations', false, [needs('Variation'), may('Seats'), may('Say it as')]),
  fallbacks: table('Fallbacks', false, [needs('Without'), needs('For'), needs('Instead')]),
  consoles: table('Consoles', false, [needs('Console')]),
  controllers: table('Controllers', false, [needs('Controller'), needs('Control'), needs('Line')]),
  timing: table('Timing', false, [needs('Name'), needs('Time')]),
  accepted: table('Accepted', false, [needs('Rule'), may('Where'), needs('Why')]),
  overlays: table('Overlays', false, [needs('Item'), needs('Value')]),
  manual: { heading: 'Manual', title: 'name', needed: false, holds: 'prose', columns: [] },
} as const satisfies Readonly<Record<string, SectionLayout>>;

export type SectionKind = keyof typeof LAYOUTS;

export const SECTION_KINDS = Object.keys(LAYOUTS) as readonly SectionKind[];

/** As a heading is written in a scheme: `## Mode: NAME`. */
export function headingText(kind: SectionKind): string {
  const { heading, title } = LAYOUTS[kind];
  if (title === 'none') return `## ${heading}`;
  return `## ${heading}: ${kind === 'manual' ? 'TITLE' : 'NAME'}`;
}
