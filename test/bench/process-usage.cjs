const { writeSync } = require('node:fs');

// loaded before the program: says on the third channel what the process took when it ends
process.on('exit', () => {
  const { maxRSS, userCPUTime, systemCPUTime } = process.resourceUsage();
  writeSync(3, JSON.stringify({ peakKib: maxRSS, cpuUs: userCPUTime + systemCPUTime }));
});
