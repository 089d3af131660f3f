import { writeFileSync } from 'node:fs';

const PROFILE_ROOM = new URL('../profile/', import.meta.url);

/** Writes a file to `dist/profile`, over the compiled one of its name. */
export function writeInProfileRoom(file: string, text: string): void {
  writeFileSync(new URL(file, PROFILE_ROOM), text);
}
