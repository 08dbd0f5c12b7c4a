/** @type {import('@stryker-mutator/api/core').PartialStrykerOptions} */
export default {
  mutate: ['src/gestures/**/*.ts', 'src/checks/**/*.ts', 'src/hardware/**/*.ts'],
  plugins: ['./tests/mutation/plugin.mjs'],
  testRunner: 'in-process',
  testRunnerNodeArgs: ['--import', 'tsx'],
  coverageAnalysis: 'perTest',
  ignorePatterns: ['out', 'dist', 'reports', '.github', '.ci'],
  tsconfigFile: 'none',
  concurrency: 1,
  // A test is ended by the runner itself (trial.ts); this is for what it can't end.
  timeoutMS: 10_000,
  reporters: ['json', 'html', 'progress-append-only'],
  jsonReporter: { fileName: 'reports/mutation/mutation.json' },
  htmlReporter: { fileName: 'reports/mutation/index.html' },
  incrementalFile: 'reports/mutation/incremental.json',
  thresholds: { high: 90, low: 85, break: 85 },
  warnings: { slow: false },
};
