import { writeFileSync, writeSync } from 'node:fs';
import type { Reporter, TestCase, TestModule } from 'vitest/node';
import { missingToolNote } from './missing-tool.js';

/** Says at the very end how many tests passed, and what was left out because a tool is missing. */
export default class SummaryReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    const summary = `${[...describeMissing(modules), countTests(modules, unhandledErrors.length)].join('\n')}\n`;
    const file = process.env['LEVERLEAF_TEST_SUMMARY'];
    if (file) writeFileSync(file, summary);
    else process.on('exit', () => writeSync(1, summary));
  }
}

function countTests(modules: readonly TestModule[], unhandledErrors: number): string {
  const states = modules.flatMap(module => [...module.children.allTests()]).map(test => test.result().state);
  const count = (state: string) => states.filter(found => found === state).length;
  // A file or suite that breaks before its tests are known, and an error outside any test, count as one each.
  const suites = modules.flatMap(module => [module, ...module.children.allSuites()]);
  const broken = suites.filter(suite => suite.errors().length > 0).length;
  const skipped = states.length - count('passed') - count('failed');
  return `tests: ${count('passed')} passed, ${count('failed') + broken + unhandledErrors} failed, ${skipped} skipped`;
}

/** One line for each missing tool with the tests that were left out for it. */
function describeMissing(modules: readonly TestModule[]): readonly string[] {
  const leftOut = new Map<string, string[]>();
  for (const test of modules.flatMap(module => [...module.children.allTests()])) {
    const name = missingTool(test);
    if (name === undefined) continue;
    leftOut.set(name, [...(leftOut.get(name) ?? []), test.fullName]);
  }
  return [...leftOut].map(([name, tests]) => `missing: ${name}; left out: ${tests.join('; ')}`);
}

function missingTool(test: TestCase): string | undefined {
  const result = test.result();
  const note = result.state === 'skipped' ? result.note : undefined;
  return note?.startsWith(missingToolNote) ? note.slice(missingToolNote.length) : undefined;
}
