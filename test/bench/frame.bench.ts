/**
 * One frame of the drill, from view to bytes on a descriptor, beside a bare write of the same bytes in the same run.
 * `standing` is the drill as it is: the target stands, the now line and the own trace move. `scrolling` moves every
 * cell of the trace in every frame, the most that a picture can change. `strip` and `zone` are the live car: marks that
 * close on the bar, then the picture over distance with both lanes.
 */
import { openSync, writeSync } from 'node:fs';
import { PassThrough, Writable } from 'node:stream';
import { bench, describe } from 'vitest';
import type { DrillView } from '../../src/drill/drill-view.ts';
import { openPicture } from '../../src/screens/blessed-picture.ts';
import type { Size } from '../../src/screens/cell-grid.ts';
import { drillScreen } from '../../src/screens/drill-screen.ts';
import { COLOUR_THEME } from '../../src/screens/theme.ts';
import { APPROACH, inZone, withLive } from '../screens/live/sample-live.ts';
import { BRAKING, ownTrace } from '../screens/sample-views.ts';

const LOOK = { theme: COLOUR_THEME, unicode: true };
const FRAMES_PER_S = 60;
const REP_S = 3;
const FRAMES = FRAMES_PER_S * REP_S;
/** The live car: where it begins to roll, and the zone that it brakes in. */
const APPROACH_FROM_M = -277;
const ZONE_FROM_M = -73;
const ZONE_M = 119;
const OWN = ownTrace(REP_S);
const NULL_DEVICE = openSync('/dev/null', 'w');

/** Takes frames as a terminal would, and keeps them for the bare write. */
class Sink extends Writable {
  readonly isTTY = true;
  readonly frames: Buffer[] = [];
  readonly columns: number;
  readonly rows: number;

  constructor({ cols, rows }: Size) {
    super();
    this.columns = cols;
    this.rows = rows;
  }

  override _write(chunk: Buffer, _: string, done: () => void): void {
    writeSync(NULL_DEVICE, chunk);
    this.frames.push(chunk);
    done();
  }
}

const MOTIONS: Readonly<Record<string, (frame: number) => DrillView>> = {
  standing: (frame) => {
    const nowS = (frame % FRAMES) / FRAMES_PER_S;
    const until = OWN.timeS.findIndex((timeS) => timeS > nowS);
    const count = until < 0 ? OWN.timeS.length : until;
    return {
      ...BRAKING,
      nowS,
      own: { timeS: OWN.timeS.subarray(0, count), value: OWN.value.subarray(0, count) },
    };
  },
  scrolling: (frame) => ({
    ...BRAKING,
    nowS: REP_S,
    own: {
      timeS: OWN.timeS.map((timeS) => timeS - (frame % FRAMES) / FRAMES_PER_S),
      value: OWN.value,
    },
  }),
  strip: (frame) => {
    const placeM = APPROACH_FROM_M + ((frame % FRAMES) / FRAMES_PER_S) * APPROACH.speedMps;
    return withLive({ ...APPROACH, placeM });
  },
  zone: (frame) => withLive(inZone(ZONE_FROM_M + (ZONE_M * (frame % FRAMES)) / FRAMES)),
};

describe.each([
  { cols: 80, rows: 24 },
  { cols: 160, rows: 48 },
])('$cols x $rows', (size) => {
  for (const [name, motion] of Object.entries(MOTIONS)) {
    const sink = new Sink(size);
    const input = Object.assign(new PassThrough(), { isTTY: true, setRawMode: () => {} });
    const picture = openPicture({ env: {}, unicode: true, pointer: false, output: sink, input });
    const times: number[] = [];
    const bareTimes: number[] = [];
    const changing: number[] = [];
    let frame = 0;
    let bare = 0;
    const options = { time: 0, iterations: 4 * FRAMES, warmupIterations: FRAMES, warmupTime: 0 };

    const report = (): void => {
      const bytes = sink.frames.map(({ length }) => length);
      const perFrame = Math.round(bytes.reduce((sum, length) => sum + length, 0) / bytes.length);
      const share = Math.round((100 * changing.length) / times.length);
      const where = `${size.cols}x${size.rows} ${name}`;
      console.log(
        `${where}: frame ${quantiles(times)}, bare write ${quantiles(bareTimes)}, ${share} % of frames change the picture: ${quantiles(changing)}, ${perFrame} bytes`,
      );
    };

    bench(
      `${name}: view, cells, bytes`,
      () => {
        const [start, written] = [performance.now(), sink.frames.length];
        picture.paint(drillScreen(motion(frame++), picture.canvas(), LOOK));
        const tookMs = performance.now() - start;
        times.push(tookMs);
        if (sink.frames.length > written) changing.push(tookMs);
      },
      options,
    );
    bench(
      `${name}: bare write of the same bytes`,
      () => {
        const start = performance.now();
        writeSync(NULL_DEVICE, sink.frames[bare++ % sink.frames.length]!);
        bareTimes.push(performance.now() - start);
      },
      { ...options, teardown: (_, mode) => void (mode === 'run' && report()) },
    );
  }
});

/** Median and 95th percentile in milliseconds, without the first fifth, the warm-up. */
function quantiles(times: readonly number[]): string {
  const sorted = times.slice(times.length / 5).toSorted((a, b) => a - b);
  const at = (share: number) =>
    (sorted[Math.floor(share * sorted.length)] ?? Number.NaN).toFixed(3);
  return `median ${at(0.5)} ms, p95 ${at(0.95)} ms`;
}
