import { type Refusal, refuse } from './control-recording.ts';
import { type BitRange, type ReportStream, readSeries } from './report-stream.ts';
import { isContinuous, type SeriesShape, seriesShape } from './series-shape.ts';

const WINDOW_BITS = 6;
/** A quarter of the window: less can be drift. */
const LARGE_SPAN = 16;
/** A hat has eight directions and a centre. */
const MOST_SWITCH_VALUES = 9;

/** A movement that goes there and back by so many counts is one, though too small to learn from. */
const SMALL_SPAN = 6;
const QUIET_SHARE = 0.34;

type Look = 'still' | 'held' | 'switch' | 'noise' | 'small';

/** Says what the recording shows instead of an axis, judged by six bits at a time. */
export function whyNoAxis(streams: readonly ReportStream[]): Refusal {
  const looks = new Set(streams.flatMap(looksOf));
  if (looks.has('held'))
    return refuse('not-released', 'The control was not released. Press it and let it go again.');
  // Beside a counter a small movement looks like noise, too.
  if (looks.has('small'))
    return refuse('too-small', 'It moved too little to tell. Move the control all the way.');
  if (looks.has('noise'))
    return refuse('too-noisy', 'The signal jumps too much. Move the control slowly and alone.');
  if (looks.has('switch'))
    return refuse('not-an-axis', 'Only buttons or a hat changed. Move the pedal or the wheel.');
  return refuse('nothing-moved', 'Nothing moved. Move the control all the way, three times.');
}

function looksOf(stream: ReportStream): Look[] {
  const tops = Array.from({ length: Math.max(0, stream.bits - WINDOW_BITS + 1) }, (_, i) => i);
  return tops.map((bitOffset) => lookAt(stream, bitOffset));
}

function lookAt(stream: ReportStream, bitOffset: number): Look {
  const window = { bitOffset, bitSize: WINDOW_BITS, signed: false };
  const moved = readSeries(stream.moved, window);
  const shape = seriesShape(moved);
  if (shape.span < SMALL_SPAN || runsAlone(stream, window, shape)) return 'still';
  const restSpan = seriesShape(readSeries(stream.rest, window)).span;
  const isQuiet = stream.rest.length > 1 && restSpan <= QUIET_SHARE * shape.span;
  if (isContinuous(shape) && shape.turns > 0) return isQuiet ? 'small' : 'still';
  if (shape.span < LARGE_SPAN) return 'still';
  // Without reports at rest, what only climbs may be a clock.
  if (isContinuous(shape)) return stream.rest.length > 1 ? 'held' : 'still';
  return new Set(moved).size <= MOST_SWITCH_VALUES ? 'switch' : 'noise';
}

/** A clock or counter gets as far at rest, in the same number of reports. */
function runsAlone({ rest, moved }: ReportStream, window: BitRange, shape: SeriesShape): boolean {
  if (rest.length === 0) return false;
  const atRest = seriesShape(readSeries(rest, window)).span;
  return atRest * Math.max(1, moved.length / rest.length) > shape.span / 2;
}
