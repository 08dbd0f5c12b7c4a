// The test runner of the mutation tests (runner.ts). Plain JavaScript, because StrykerJS reads this file in all its
// processes, and only the one that runs the tests can read TypeScript.
import { declareFactoryPlugin, PluginKind } from '@stryker-mutator/api/plugin';

createRunner.inject = [];

function createRunner() {
  let runner;
  return {
    capabilities: () => ({ reloadEnvironment: true }),
    init: async () => {
      const { createWarmRunner } = await import('./runner.js');
      runner = await createWarmRunner(process.cwd());
    },
    dryRun: options => runner.dryRun(options),
    mutantRun: options => runner.mutantRun(options),
  };
}

export const strykerPlugins = [declareFactoryPlugin(PluginKind.TestRunner, 'in-process', createRunner)];
