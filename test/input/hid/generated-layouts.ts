import type { ControlRecording } from '../../../src/input/hid/control-recording.ts';
import {
  axisCounts,
  type SimulatedDevice,
  type SimulatedField,
  seededRandom,
} from './simulated-device.ts';
import { at, constant, counter, type Place, recordBrake } from './simulated-layouts.ts';

/** A report layout drawn from a seed, and where its brake really is. */
export interface GeneratedLayout {
  /** What it is like, for the name of a test. */
  readonly name: string;
  readonly device: SimulatedDevice;
  readonly brake: {
    readonly reportId: number;
    readonly bitOffset: number;
    readonly bitSize: number;
    readonly signed: boolean;
    readonly rest: number;
    readonly full: number;
    readonly noise: number;
  };
  readonly recording: ControlRecording;
}

interface Neighbour {
  readonly bits: number;
  readonly name: string;
  readonly field: (place: Place) => SimulatedField;
  /** True where it is a whole byte in every report that is known. */
  readonly wholeBytes?: boolean;
}

type Draw = (below: number) => number;

/** XOR of the bytes before it, and the sum of them: what makers put at the end of a report. */
const xor = (place: Place): SimulatedField =>
  at(place, ({ bytes }) => bytes.reduce((all, byte) => all ^ byte, 0));
const sum = (place: Place): SimulatedField =>
  at(place, ({ bytes }) => bytes.reduce((all, byte) => (all + byte) % 256, 0));

function neighbourOf(draw: Draw): Neighbour {
  const kinds: readonly (() => Neighbour)[] = [
    () => {
      const bits = 8 + draw(9);
      const [rest, full] = ends(draw, bits);
      return {
        bits,
        name: `throttle of ${bits} bits`,
        field: (place) =>
          at(
            place,
            axisCounts(rest, full, (m) => m.throttle, bits > 10 ? 3 : 0.6),
          ),
      };
    },
    () => ({
      bits: 16,
      name: 'noisy wheel',
      field: (place) =>
        at(
          place,
          axisCounts(0, 65_535, (m) => (m.steering + 1) / 2, 4),
        ),
      wholeBytes: true,
    }),
    () => ({ bits: 8, name: 'counter', field: (place) => counter(place), wholeBytes: true }),
    () => ({
      bits: 16,
      name: 'clock',
      field: (place) => at(place, ({ timeS, index }) => Math.trunc(4 * index + timeS) % 65_536),
      wholeBytes: true,
    }),
    () => ({
      bits: 8,
      name: 'random byte',
      field: (place) => at(place, ({ random }) => Math.trunc(256 * random())),
      wholeBytes: true,
    }),
    () => ({
      bits: 12,
      name: 'noisy sensor',
      field: (place) => at(place, ({ random }) => 1800 + Math.trunc(40 * random())),
    }),
    () => ({ bits: 4, name: 'hat', field: (place) => constant(place, 8) }),
    () => {
      const bits = 1 + draw(12);
      return { bits, name: `${bits} buttons`, field: (place) => constant(place, draw(2 ** bits)) };
    },
    () => ({
      bits: 8,
      name: 'temperature',
      field: (place) => at(place, ({ timeS }) => 31 + Math.trunc(timeS / 4)),
    }),
  ];
  return kinds[draw(kinds.length)]!();
}

function ends(draw: Draw, bits: number): readonly [rest: number, full: number] {
  const top = 2 ** bits - 1;
  const [low, high] = [draw(6), top - draw(6)];
  return draw(2) === 1 ? [high, low] : [low, high];
}

/** Draws a layout: the brake among two to four neighbours, then a checksum, a mirror, or neither; with an id or not. */
export function generatedLayout(seed: number): GeneratedLayout {
  const random = seededRandom(seed);
  const draw: Draw = (below) => Math.trunc(below * random());
  const bitSize = 8 + draw(9);
  const signed = bitSize === 16 && draw(3) === 0;
  const shift = signed ? 2 ** (bitSize - 1) : 0;
  const [rest, full] = ends(draw, bitSize).map((counts) => counts - shift) as [number, number];
  const isCombined = draw(5) === 0;
  const middle = Math.round((rest + full) / 2);
  const noise = bitSize > 10 ? draw(4) : 0.6 * draw(2);
  const level = axisCounts(rest, full, (m) => m.brake, noise);
  const share = axisCounts(middle, full, (m) => m.brake - m.throttle, noise);
  const neighbours = Array.from({ length: 2 + draw(3) }, () => neighbourOf(draw));
  const place = draw(neighbours.length + 1);
  const reportId = draw(3) === 0 ? 1 + draw(9) : 0;

  const fields: SimulatedField[] = [];
  let end = 0;
  let bitOffset = 0;
  const put = (bits: number, field: (place: Place) => SimulatedField, whole = false): number => {
    const start = whole ? 8 * Math.ceil(end / 8) : end;
    fields.push({ ...field([start, bits]), reportId });
    end = start + bits;
    return start;
  };
  const putBrake = (): void => {
    const whole = bitSize === 8 || bitSize === 16 ? draw(2) === 0 : false;
    const counts = isCombined ? clipped(share, rest, full) : level;
    bitOffset = put(bitSize, (at_) => at(at_, counts), whole);
  };
  neighbours.forEach(({ bits, field, wholeBytes }, i) => {
    if (i === place) putBrake();
    put(bits, field, wholeBytes);
  });
  if (place === neighbours.length) putBrake();
  const tail = draw(4);
  // A mirror as fine as the brake is as good as the brake.
  const hasMirror = tail === 2 && !isCombined && bitSize > 8;
  const mirror = (m: Parameters<SimulatedField['counts']>[0]): number => Math.round(255 * m.brake);
  if (tail === 0) put(8, xor, true);
  if (tail === 1) put(8, sum, true);
  if (hasMirror) put(8, (at_) => at(at_, mirror), true);

  const bytes = Math.ceil(end / 8);
  const other = reportId > 0 ? { [reportId + 1]: 4 } : {};
  const more = reportId > 0 ? [{ ...counter([0, 16]), reportId: reportId + 1 }] : [];
  const rateHz = [125, 250, 500, 1000][draw(4)]!;
  const device: SimulatedDevice = {
    rateHz,
    bytes: { [reportId]: bytes, ...other },
    fields: [...fields, ...more],
  };
  const tailName = ['XOR', 'sum', hasMirror ? 'mirror in vendor bytes' : '', ''][tail];
  const traits = [
    `${bitSize} bits${signed ? ' signed' : ''}${full < rest ? ' inverted' : ''}${isCombined ? ' combined' : ''} from bit ${bitOffset}`,
    ...(noise > 0 ? [`noise ${noise}`] : []),
    ...(reportId > 0 ? [`report ${reportId} of two`] : []),
    `${rateHz}/s`,
    `beside ${[...neighbours.map(({ name }) => name), tailName].filter((name) => name !== '').join(', ')}`,
  ];
  return {
    name: traits.join(', '),
    device,
    brake: { reportId, bitOffset, bitSize, signed, rest: isCombined ? middle : rest, full, noise },
    recording: recordBrake(device, 0, seed),
  };
}

/** A combined axis ends at both ends of its range. */
function clipped(
  counts: SimulatedField['counts'],
  rest: number,
  full: number,
): SimulatedField['counts'] {
  return (m) => Math.min(Math.max(rest, full), Math.max(Math.min(rest, full), counts(m)));
}
