#!/usr/bin/env node
import { runCommandLine } from './program.js';
import { createTerminal } from './terminal.js';

process.exitCode = await runCommandLine(process.argv.slice(2), createTerminal());
