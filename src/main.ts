#!/usr/bin/env node
import { endQuietlyOnClosedPipe, exit, run } from './commands/run.ts';

endQuietlyOnClosedPipe();
exit(await run(process.argv.slice(2)));
