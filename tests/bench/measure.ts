/** Milliseconds that some work takes. */
export function timeOf(work: () => void): number {
  collectGarbage();
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** Milliseconds that some work takes until it has settled. */
export async function timeOfAsync(work: () => Promise<unknown>): Promise<number> {
  collectGarbage();
  const start = performance.now();
  await work();
  return performance.now() - start;
}

/** So that none pays for what another has left; where Node was started with `--expose-gc`. */
function collectGarbage(): void {
  globalThis.gc?.();
}

export function median(numbers: readonly number[]): number {
  const sorted = numbers.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/**
 * The median of the ratios of two works that are done in turn, some rounds over: what else the machine does then
 * weighs on both. The first round, in which code is compiled, is not counted.
 *
 * @param rounds at least 1
 */
export async function ratioOf(work: () => unknown, floor: () => unknown, rounds: number): Promise<Compared> {
  const works: number[] = [];
  const floors: number[] = [];
  for (let round = 0; round <= rounds; round++) {
    const floorMs = await timeOfAsync(async () => floor());
    const workMs = await timeOfAsync(async () => work());
    if (round === 0) continue;
    works.push(workMs);
    floors.push(floorMs);
  }
  return {
    ratio: median(works.map((ms, index) => ms / (floors[index] ?? 1))),
    work: median(works),
    floor: median(floors),
  };
}

export interface Compared {
  /** Median of the rounds' ratios. */
  readonly ratio: number;
  /** Milliseconds, medians. */
  readonly work: number;
  readonly floor: number;
}

/** The exponent of growth: the slope of a straight line through the points on two logarithmic scales. */
export function exponentOf(points: readonly (readonly [size: number, ms: number])[]): number {
  const logs = points.map(([size, ms]) => [Math.log(size), Math.log(ms)] as const);
  const mean = (pick: 0 | 1) => logs.reduce((sum, log) => sum + log[pick], 0) / logs.length;
  const [x, y] = [mean(0), mean(1)];
  const rise = logs.reduce((sum, [a, b]) => sum + (a - x) * (b - y), 0);
  return rise / logs.reduce((sum, [a]) => sum + (a - x) ** 2, 0);
}
