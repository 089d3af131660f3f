// Writes reps as fast as it can and prints each number once addRep has returned.
// Arguments: folder of the compiled program, data folder, implementation, driver's name, number of reps.
import { writeSync } from 'node:fs';

const [, , compiled, folder, implementation, driver, count] = process.argv;
const { openHistory } = await import(`${compiled}/history/open-history.js`);
const { loadNodeSqlite } = await import(`${compiled}/history/sql/node-sqlite.js`);
const { loadBetterSqlite } = await import(`${compiled}/history/sql/better-sqlite.js`);
const DRIVERS = {
  'node:sqlite': [loadNodeSqlite],
  'better-sqlite3': [loadBetterSqlite],
  journal: [],
};

/** 4000 samples whose noise depends on the number of the rep, so that they fill several pages of a database. */
function record(number) {
  let state = number + 1;
  const noise = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state >>> 20;
  };
  const timeS = Float64Array.from({ length: 4000 }, (_, i) => i / 1000);
  const value = timeS.map(() => noise() / 65536);
  return {
    brake: { timeS, value },
    throttle: null,
    clutch: null,
    steering: null,
    buttons: [],
    gaps: [],
    brakeStepLevel: 1 / 65535,
    endS: 4,
  };
}

const history = openHistory(folder, { drivers: DRIVERS[implementation] });
const practice = history.startPractice({
  driver,
  startedAt: { utcMs: 0, zone: 'UTC', offsetMin: 0 },
  source: 'virtual',
  foot: 'left',
  footwear: 'socks',
  calibrationId: 'c',
  sensor: 'force',
  seed: 1,
});
for (let number = 1; number <= Number(count); number++) {
  history.addRep(practice, {
    at: { utcMs: number, zone: 'UTC', offsetMin: 0 },
    car: null,
    corner: null,
    variant: null,
    condition: null,
    live: null,
    targetId: 'hairpin',
    targetVersion: 'v',
    targetChange: null,
    number,
    block: 1,
    phase: 'block',
    order: 'blocked',
    feedback: 'shown',
    selfRating: null,
    voided: null,
    record: record(number),
    outcome: {
      kind: 'no-rep',
      version: 1,
      score: 0,
      reason: 'never braked',
      side: null,
      flags: [],
    },
  });
  writeSync(1, `${number}\n`);
}
history.close();
