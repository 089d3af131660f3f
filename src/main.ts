#!/usr/bin/env node
import { keepCompiledCode } from './kept-code.ts';

const argv = process.argv.slice(2);
keepCompiledCode(argv);
// what is kept serves modules that are loaded from here on
void import('./commands/run.ts').then(async ({ endQuietlyOnClosedPipe, exit, run }) => {
  endQuietlyOnClosedPipe();
  exit(await run(argv));
});
