import type { ValidateFunction } from 'ajv';
import { Problem } from '../../problem.ts';
import { validatorOf } from '../../profile/validator-of.ts';
import type { Rig } from './rig.ts';
import {
  RIG_FILE_FORMAT as FORMAT,
  RIG_FILE_SCHEMA,
  RIG_FILE_VERSION as VERSION,
} from './rig-file-schema.ts';

/** The text of a rig file: one JSON object with `format`, `version` and `rigs`, the last one used first. */
export function writeRigText(rigs: readonly Rig[]): string {
  return `${JSON.stringify({ format: FORMAT, version: VERSION, rigs }, null, 2)}\n`;
}

/**
 * Reads the text of a rig file.
 * @throws Problem for text that is no rig file, a newer version, and anything missing, unknown or of the wrong kind.
 */
export function parseRigText(text: string, file: string): readonly Rig[] {
  const content = parseJson(text, file);
  refuseNewer(content, file);
  const validate = validatorOf(RIG_FILE_SCHEMA) as FileValidator;
  if (validate(content)) return content.rigs;
  const [error] = validate.errors ?? [];
  throw damaged(file, `${error?.instancePath || 'the file'} ${error?.message ?? 'is damaged'}`);
}

type FileValidator = ValidateFunction<{ readonly rigs: readonly Rig[] }>;

function parseJson(text: string, file: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw damaged(file, `it is not JSON (${(error as Error).message})`);
  }
}

function refuseNewer(content: unknown, file: string): void {
  const { format, version } = (content ?? {}) as { format?: unknown; version?: unknown };
  if (format !== FORMAT || typeof version !== 'number' || version <= VERSION) return;
  throw new Problem(`this rig file has version ${version}, this program knows ${VERSION}`, {
    where: file,
    next: 'Use a newer ebbline, or another --data-dir. The file was left as it is.',
  });
}

function damaged(file: string, what: string): Problem {
  return new Problem(`the rig file cannot be read: ${what}`, {
    where: file,
    next: 'Mend it, or move it away and run `ebbline rig setup`. The file was left as it is.',
  });
}
