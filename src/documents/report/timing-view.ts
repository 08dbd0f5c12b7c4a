import type { Witness } from '../../findings/finding.js';
import { durationText, foldWitness, runText, type TimelineRow } from '../../findings/formats/timeline.js';
import { STANDARDS, type StandardName, type TvStandard } from '../../hardware/clocks.js';
import type { Scheme } from '../../language/model.js';
import { readPeriodMs } from '../bits/words.js';

/** A witness as a timing diagram: columns of time, a track for each control and action. */
export interface TimingView {
  readonly standard: string;
  readonly columns: readonly TimingColumn[];
  /** Controls first, then actions, each in the order of first appearance. */
  readonly tracks: readonly TimingTrack[];
  /** The same in words, for those who can't see the drawing. */
  readonly inWords: string;
}

/** One read, or a run of reads during which nothing changes. */
export interface TimingColumn {
  /** First read, from 0. */
  readonly first: number;
  /** Reads in the run, at least 1. */
  readonly reads: number;
  /** Milliseconds of the first read after read 0. */
  readonly startMs: number;
  /** `120 reads, 2.00 s`; empty for a single read. */
  readonly label: string;
}

export interface TimingTrack {
  readonly kind: 'control' | 'action';
  readonly name: string;
  /** For each column: engaged, or fires at each of its reads. */
  readonly on: readonly boolean[];
}

/** Runs of more reads than this are folded into one column. */
const LONGEST_UNFOLDED = 3;

export function viewTiming(witness: Witness, scheme: Scheme): TimingView {
  const standard = standardOf(witness.standard, scheme);
  const periodMs = readPeriodMs(standard, scheme.game.readEvery.value);
  const runs = foldWitness(witness).flatMap(unfoldShort);
  const columns = runs.map(run => createColumn(run, periodMs));
  return {
    standard: witness.standard,
    columns,
    tracks: [...tracksOf('control', runs), ...tracksOf('action', runs)],
    inWords: runs.map((run, index) => columnWords(run, columns[index])).join(' '),
  };
}

function standardOf(name: string, scheme: Scheme): TvStandard {
  return scheme.standards.find(standard => standard.name === name) ?? STANDARDS[name as StandardName];
}

/** Short runs become single reads again. */
function unfoldShort(row: TimelineRow): readonly TimelineRow[] {
  const reads = readsOf(row);
  if (reads > LONGEST_UNFOLDED) return [row];
  return Array.from({ length: reads }, (_, index) => {
    const read = row.first + index;
    return { ...row, first: read, last: read };
  });
}

const readsOf = ({ first, last }: TimelineRow): number => last - first + 1;

function createColumn(row: TimelineRow, periodMs: number): TimingColumn {
  const reads = readsOf(row);
  return {
    first: row.first,
    reads,
    startMs: row.first * periodMs,
    label: reads === 1 ? '' : runText(reads, periodMs),
  };
}

function tracksOf(kind: TimingTrack['kind'], runs: readonly TimelineRow[]): readonly TimingTrack[] {
  const namesIn = ({ engaged, fires }: TimelineRow) => (kind === 'control' ? engaged : fires);
  const names = [...new Set(runs.flatMap(namesIn))];
  return names.map(name => ({ kind, name, on: runs.map(run => namesIn(run).includes(name)) }));
}

function columnWords(row: TimelineRow, column: TimingColumn | undefined): string {
  const when = row.first === row.last ? `Read ${row.first}` : `Reads ${row.first} to ${row.last}`;
  const engaged = row.engaged.length === 0 ? 'nothing engaged' : row.engaged.join(' and ');
  const fires = row.fires.length === 0 ? '' : `; fires ${row.fires.join(' and ')}`;
  return `${when} (${durationText(column?.startMs ?? 0)}): ${engaged}${fires}.`;
}
