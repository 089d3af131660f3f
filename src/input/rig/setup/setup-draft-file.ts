import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { ValidateFunction } from 'ajv';
import { validatorOf } from '../../../profile/validator-of.ts';
import { writePrivateFile } from '../write-private-file.ts';
import type { SetupDraft } from './setup-draft.ts';
import {
  SETUP_DRAFT_FORMAT as FORMAT,
  SETUP_DRAFT_SCHEMA,
  SETUP_DRAFT_VERSION as VERSION,
} from './setup-draft-schema.ts';

/** Where it is kept how far setting up had come. */
export function setupDraftFile(dataDir: string): string {
  return join(dataDir, 'rig-setup.json');
}

/** What was left; null where nothing was, and `unreadable` where the file is no draft of this version. */
export async function loadSetupDraft(dataDir: string): Promise<SetupDraft | null | 'unreadable'> {
  let content: unknown;
  try {
    content = JSON.parse(await readFile(setupDraftFile(dataDir), 'utf8'));
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? null : 'unreadable';
  }
  const validate = validatorOf(SETUP_DRAFT_SCHEMA) as ValidateFunction<SetupDraft>;
  return validate(content) ? { done: content.done, devices: content.devices } : 'unreadable';
}

/** @throws Problem where the folder cannot be written. */
export async function saveSetupDraft(dataDir: string, draft: SetupDraft): Promise<void> {
  const text = JSON.stringify({ format: FORMAT, version: VERSION, ...draft }, null, 2);
  await writePrivateFile(setupDraftFile(dataDir), `${text}\n`);
}

/** Setting up is done, or to be done anew. */
export async function dropSetupDraft(dataDir: string): Promise<void> {
  await rm(setupDraftFile(dataDir), { force: true });
}
