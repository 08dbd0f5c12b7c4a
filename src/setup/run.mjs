import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** The folder of the package. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

/** The oldest Node that the dependencies support; package.json says the same. */
export const neededNode = '20.19';

export function isNodeNewEnough() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  const [neededMajor, neededMinor] = neededNode.split('.').map(Number);
  return major > neededMajor || (major === neededMajor && minor >= neededMinor);
}

/** One line of progress. */
export function say(line) {
  console.log(`leverleaf: ${line}`);
}

/** Says what is wrong and returns the exit code for "could not run". */
export function fail(line) {
  console.error(`leverleaf: ${line}`);
  return 2;
}

/** Runs a script of this folder with this Node; what it prints is shown. Returns its exit code. */
export function runNode(args, environment = {}) {
  return run(process.execPath, args, environment);
}

/** Runs npm, the one that runs this script if there is one. Returns its exit code. */
export function runNpm(args, environment = {}) {
  const npm = process.env.npm_execpath;
  if (npm?.endsWith('.js')) return runNode([npm, ...args], environment);
  return run('npm', args, environment, { shell: process.platform === 'win32' });
}

function run(command, args, environment, options = {}) {
  const { status, error } = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...environment },
    ...options,
  });
  if (error) console.error(`leverleaf: ${command} could not be run: ${error.message}`);
  return status ?? 1;
}
