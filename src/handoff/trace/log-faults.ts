/** Something of a log that can’t be read. */
export interface Fault {
  /** Faults of one kind differ in no more than their line. */
  readonly kind: string;
  readonly text: string;
}

/** Of each kind so many are told; the others are counted. */
const MOST_OF_A_KIND = 3;

/** What is told of them, a sentence each. */
export function sentencesOf(faults: readonly Fault[]): readonly string[] {
  return [...new Set(faults.map(({ kind }) => kind))].flatMap(kind => {
    const alike = faults.filter(fault => fault.kind === kind).map(({ text }) => text);
    const more = alike.length - MOST_OF_A_KIND;
    const rest = more > 0 ? [`… and ${more} more ${more === 1 ? 'line' : 'lines'} like that.`] : [];
    return [...alike.slice(0, MOST_OF_A_KIND), ...rest];
  });
}
