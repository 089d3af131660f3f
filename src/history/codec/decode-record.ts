import { Problem } from '../../problem.ts';
import { TICKS_PER_S } from '../../trace/quanta.ts';
import type { Gap, RepRecord } from '../../trace/rep-record.ts';
import type { ButtonEvent } from '../../trace/rig-batch.ts';
import type { Track } from '../../trace/track.ts';
import { zlib } from '../zlib.ts';
import { ByteReader } from './byte-reader.ts';
import {
  ACTIONS,
  CHANNELS,
  FORMAT_VERSION,
  HEADER_BYTES,
  LARGEST_PAYLOAD,
  MAGIC,
  predicted,
} from './record-format.ts';

/**
 * The rep that `encodeRecord` packed.
 *
 * @param where Place for the message, for example the file and the rep.
 * @throws Problem for bytes that are damaged, are no rep, or come from a newer version.
 */
export function decodeRecord(bytes: Uint8Array, where?: string): RepRecord {
  return decoded(bytes, where, decodePayload);
}

/** The brake alone of the rep that `encodeRecord` packed: what pictures of many reps need, in a third of the time. */
export function decodeBrake(bytes: Uint8Array, where?: string): Track {
  return decoded(bytes, where, decodeBrakeOf);
}

function decoded<T>(
  bytes: Uint8Array,
  where: string | undefined,
  decode: (payload: Uint8Array) => T,
): T {
  const place = where === undefined ? {} : { where };
  checkHeader(bytes, place);
  try {
    return decode(unpack(bytes));
  } catch (error) {
    throw new Problem(`the samples of the rep are damaged (${String((error as Error).message)})`, {
      ...place,
      next: 'Take them from a backup; the scores of the rep are kept apart and still there.',
    });
  }
}

function checkHeader(bytes: Uint8Array, place: { readonly where?: string }): void {
  if (bytes.length < HEADER_BYTES || MAGIC.some((byte, i) => bytes[i] !== byte))
    throw new Problem('these are not the samples of a rep', {
      ...place,
      next: 'Take them from a backup; the scores of the rep are kept apart and still there.',
    });
  if (bytes[4] !== FORMAT_VERSION)
    throw new Problem(`the samples of the rep have format ${bytes[4]}, this program reads 1`, {
      ...place,
      next: 'Use the version of ebbline that wrote them, or a newer one.',
    });
}

function unpack(bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const length = view.getUint32(5, true);
  if (length > LARGEST_PAYLOAD) throw new RangeError('impossible length');
  const packed = bytes.subarray(HEADER_BYTES);
  const { crc32, inflateRawSync } = zlib();
  const payload = inflateRawSync(packed, { maxOutputLength: Math.max(1, length) });
  if (payload.length !== length || crc32(payload) !== view.getUint32(9, true))
    throw new RangeError('the check sum is wrong');
  return payload;
}

function decodePayload(payload: Uint8Array): RepRecord {
  const input = new ByteReader(payload);
  const counts = CHANNELS.map(() => input.unsigned() - 1);
  const times = counts.map((count) => readTimes(input, count));
  const values = CHANNELS.map(({ perUnit }, i) => readValues(input, counts[i]!, perUnit));
  const [brake, throttle, clutch, steering] = counts.map((count, i) =>
    count < 0 ? null : { timeS: times[i]!, value: values[i]! },
  );
  const buttons = Array.from({ length: readCount(input) }, () => readButton(input));
  const gaps = Array.from({ length: readCount(input) }, () => readGap(input));
  const endS = readTime(input);
  const brakeStepLevel = input.float();
  if (input.left > 0) throw new RangeError('there are bytes after the end');
  return {
    brake: present(brake),
    throttle: throttle ?? null,
    clutch: clutch ?? null,
    steering: steering ?? null,
    buttons,
    gaps,
    brakeStepLevel,
    endS,
  };
}

/** The brake comes first among the times and among the values. */
function decodeBrakeOf(payload: Uint8Array): Track {
  const input = new ByteReader(payload);
  const [brake, ...others] = CHANNELS.map(() => input.unsigned() - 1);
  if (brake === undefined || brake < 0) return present(null);
  const timeS = readTimes(input, brake);
  for (const count of others) input.skipIntegers(Math.max(0, count));
  return { timeS, value: readValues(input, brake, CHANNELS[0]!.perUnit) };
}

function present(brake: Track | null | undefined): Track {
  if (!brake) throw new RangeError('there is no brake');
  return brake;
}

function readTimes(input: ByteReader, count: number): Float64Array<ArrayBuffer> {
  const timeS = samples(input, count);
  let ticks = 0;
  for (let i = 0; i < timeS.length; i++) {
    ticks += i === 0 ? input.signed() : input.unsigned();
    timeS[i] = ticks / TICKS_PER_S;
  }
  return timeS;
}

function readValues(input: ByteReader, count: number, perUnit: number): Float64Array<ArrayBuffer> {
  const value = samples(input, count);
  let [last, secondLast, thirdLast] = [0, 0, 0];
  for (let i = 0; i < value.length; i++) {
    const quanta = predicted(last, thirdLast) + input.signed();
    value[i] = quanta / perUnit;
    [last, secondLast, thirdLast] = [quanta, last, secondLast];
  }
  return value;
}

/** A sample takes a byte at least, which bounds what a wrong count can allocate. */
function samples(input: ByteReader, count: number): Float64Array<ArrayBuffer> {
  if (count > input.left) throw new RangeError('the bytes end early');
  return new Float64Array(Math.max(0, count));
}

function readCount(input: ByteReader): number {
  const count = input.unsigned();
  if (count > input.left) throw new RangeError('the bytes end early');
  return count;
}

function readButton(input: ByteReader): ButtonEvent {
  const timeS = readTime(input);
  const code = input.unsigned();
  const action = ACTIONS[code >> 1];
  if (action === undefined) throw new RangeError('unknown button action');
  return { timeS, control: input.text(), pressed: (code & 1) === 1, action };
}

function readGap(input: ByteReader): Gap {
  return { fromS: readTime(input), toS: readTime(input) };
}

function readTime(input: ByteReader): number {
  return input.signed() / TICKS_PER_S;
}
