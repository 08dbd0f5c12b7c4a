import type { Terminal } from './terminal.js';

/** Says what a command is at. */
export interface Progress {
  step(text: string): void;
  /** The last word: what was done. */
  done(text: string): void;
  fail(text: string): void;
}

/** At a terminal one line that changes; elsewhere a plain line for each step. */
export async function createProgress(terminal: Terminal): Promise<Progress> {
  if (!terminal.isInteractive) {
    return { step: terminal.say, done: terminal.say, fail: terminal.say };
  }
  const { default: createSpinner } = await import('yocto-spinner');
  const spinner = createSpinner();
  return {
    step(text) {
      spinner.text = text;
      if (!spinner.isSpinning) spinner.start();
    },
    done: text => void spinner.success(text),
    fail: text => void spinner.error(text),
  };
}
