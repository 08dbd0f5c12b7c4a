import type { Examined } from './examine.js';

/** From the fuzzer to a worker process. */
export interface FuzzJob {
  readonly seeds: readonly number[];
}

/** From a worker process to the fuzzer; `free` asks for the next job. */
export type FuzzResult =
  | { readonly kind: 'free' }
  | { readonly kind: 'begun'; readonly seed: number }
  | ({ readonly kind: 'done'; readonly seed: number } & Examined);
