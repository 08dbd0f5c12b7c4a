/** What a command ends with: fine, findings of severity error, could not run. */
export type ExitCode = 0 | 1 | 2;
