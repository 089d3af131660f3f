// A process that plays devices through named pipes in the folder given, see test/live/report-streams.mjs.
import { constants, openSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { playDevices } from '../../live/report-streams.mjs';

const folder = process.argv[2];

playDevices(({ id }) => {
  // Open for both, so that a pipe lives on while nobody reads it.
  const pipe = openSync(join(folder, id), constants.O_RDWR | constants.O_NONBLOCK);
  return {
    send(report) {
      try {
        writeSync(pipe, report);
      } catch (error) {
        // Full, as a kernel's queue is that nobody reads: the report is lost.
        if (error.code !== 'EAGAIN') throw error;
      }
    },
    close() {
      throw new Error('a pipe cannot be unplugged');
    },
  };
});
