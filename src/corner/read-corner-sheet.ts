import { fingerprint } from '../profile/fingerprint.ts';
import { idOfFile } from '../profile/id-of-file.ts';
import { type ProfileReading, soundValue } from '../profile/profile-reading.ts';
import { readProfile } from '../profile/read-profile.ts';
import type { CornerFile } from './corner-file.ts';
import { brokenRules } from './corner-rules.ts';
import { CORNER_SCHEMA } from './corner-schema.ts';
import type { CornerSheet } from './corner-sheet.ts';
import { sheetOfFile } from './sheet-of-file.ts';

/**
 * The corner sheet in the text of a YAML file, for whoever shows the problems one by one. Throws nothing.
 * @param fileName with or without folders; without them and its ending it becomes the sheet's id
 */
export function checkCornerSheet(text: string, fileName: string): ProfileReading<CornerSheet> {
  const reading = readProfile<CornerFile>(text, CORNER_SCHEMA, brokenRules);
  if (reading.kind === 'refused') return reading;
  return {
    kind: 'read',
    value: sheetOfFile(reading.value, idOfFile(fileName), fingerprint(text)),
  };
}

/**
 * The corner sheet in the text of a YAML file.
 * @param fileName for the id and for messages
 * @throws Problem (exit code 1) that lists every problem of the file with line and column
 */
export function readCornerSheet(text: string, fileName: string): CornerSheet {
  return soundValue(checkCornerSheet(text, fileName), fileName);
}
