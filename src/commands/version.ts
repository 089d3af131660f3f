import { createRequire } from 'node:module';

const load = createRequire(import.meta.url);

/** The package's version; src/ and dist/ lie equally deep, so one relative path serves both. */
export function version(): string {
  return load('../../package.json').version;
}
