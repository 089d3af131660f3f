import { existsSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const LINE = /^# yaml-language-server: \$schema=(?<place>\S*?(?<name>[a-z-]+\.schema\.json))[^\n]*/;
/** Same place seen from src/commands and from dist/commands. */
const SCHEMAS = new URL('../../profiles/schema/', import.meta.url);

/**
 * The text of a file with the line by which editors find its schema leading there from the file's place: to the schema
 * that came with the program where the line does not lead to one. A text without such a line is returned as it is.
 *
 * @param path where the text is going to be
 */
export function withSchemaPlace(text: string, path: string): string {
  const { place, name } = LINE.exec(text)?.groups ?? {};
  if (place === undefined || name === undefined) return text;
  if (leadsSomewhere(place, path)) return text;
  const schema = new URL(name, SCHEMAS);
  if (!existsSync(fileURLToPath(schema))) return text;
  return text.replace(LINE, `# yaml-language-server: $schema=${schema.href}`);
}

/** A place on the network is not looked at. */
function leadsSomewhere(place: string, path: string): boolean {
  if (/^https?:/i.test(place)) return true;
  if (/^file:/i.test(place)) return URL.canParse(place) && existsSync(new URL(place));
  return existsSync(resolve(dirname(path), place));
}
