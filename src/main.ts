#!/usr/bin/env node
import module from 'node:module';

// Node 22 keeps what it has compiled from one run to the next; Node 20 has no such cache.
(module as { enableCompileCache?: () => unknown }).enableCompileCache?.();
const { endQuietlyOnClosedPipe, exit, run } = await import('./commands/run.ts');

endQuietlyOnClosedPipe();
exit(await run(process.argv.slice(2)));
