import { INSTRUMENTER_CONSTANTS, type MutantCoverage } from '@stryker-mutator/api/core';

/** What the switches in the mutated sources look at and write to, under the names that StrykerJS gives it. */
export interface SwitchBoard {
  activeMutant: string | undefined;
  currentTestId: string | undefined;
  mutantCoverage: MutantCoverage;
  hitCount: number | undefined;
  hitLimit: number | undefined;
}

/** All modules of a process share it. */
export const SWITCH_BOARD: SwitchBoard = {
  activeMutant: undefined,
  currentTestId: undefined,
  mutantCoverage: { static: {}, perTest: {} },
  hitCount: undefined,
  hitLimit: undefined,
};
Reflect.set(globalThis, INSTRUMENTER_CONSTANTS.NAMESPACE, SWITCH_BOARD);
