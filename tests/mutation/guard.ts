import { Script } from 'node:vm';

/** What a guarded call ends with if it takes too long; nothing inside the call can catch it. */
export class TookTooLongError extends Error {}

let call: () => unknown = () => undefined;
const CALL = Symbol.for('leverleaf.guarded-call');
Reflect.set(globalThis, CALL, () => call());
const SCRIPT = new Script(`globalThis[Symbol.for('leverleaf.guarded-call')]()`);

/** Calls a function and ends it after some time (ms), in the middle of an endless loop too. */
export function guarded<Result>(body: () => Result, timeout: number): Result {
  call = body;
  try {
    return SCRIPT.runInThisContext({ timeout, displayErrors: false }) as Result;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : '';
    throw code === 'ERR_SCRIPT_EXECUTION_TIMEOUT'
      ? new TookTooLongError(`took more than ${timeout} ms`)
      : error;
  }
}
