import { writeSync } from 'node:fs';

// loaded before the program: says on the third channel how much memory the process had at most, in KiB
process.on('exit', () => writeSync(3, `${process.resourceUsage().maxRSS}`));
