import type { ValidateFunction } from 'ajv';
import { validatorOf } from '../../profile/validator-of.ts';
import { cleanText } from '../discovery/clean-text.ts';
import type { Rig } from '../rig/rig.ts';
import type { DeviceIdentity } from '../rig-device.ts';
import { hexBytes, LineFault } from './parse-recording-line.ts';
import type { RecordingHeader } from './recording.ts';
import { RECORDING_HEADER_SCHEMA } from './recording-header-schema.ts';
import { RECORDING_FORMAT, RECORDING_VERSION } from './recording-lines.ts';

interface HeaderJson {
  readonly label: string;
  readonly devices: readonly {
    readonly identity: DeviceIdentity;
    readonly name: string;
    readonly descriptor: string | null;
  }[];
  readonly rig: Rig | null;
}

/**
 * Reads the first line of a recording. Names come from a file and are made safe to print.
 * @throws LineFault for a line that is no header this program knows.
 */
export function parseRecordingHeader(text: string): RecordingHeader {
  const header = checkedHeader(text);
  return {
    label: cleanText(header.label),
    rig: header.rig,
    devices: header.devices.map(({ identity, name, descriptor }) => ({
      identity,
      name: cleanText(name),
      path: 'recording',
      descriptor: descriptor === null ? null : hexBytes(descriptor),
    })),
  };
}

function checkedHeader(text: string): HeaderJson {
  const value = jsonOrNull(text);
  const { format, version } = (value ?? {}) as { format?: unknown; version?: unknown };
  if (format !== RECORDING_FORMAT) throw new LineFault('it is not the header of a recording');
  if (typeof version === 'number' && version > RECORDING_VERSION)
    throw new LineFault(
      `it has version ${version}, this program knows ${RECORDING_VERSION}; a newer one is needed`,
    );
  const validate = validatorOf(RECORDING_HEADER_SCHEMA) as ValidateFunction<HeaderJson>;
  if (validate(value)) return value;
  const [error] = validate.errors ?? [];
  throw new LineFault(`${error?.instancePath || 'it'} ${error?.message ?? 'is damaged'}`);
}

function jsonOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
