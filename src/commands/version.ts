import { createRequire } from 'node:module';

const manifest = createRequire(import.meta.url)('../../package.json') as {
  readonly version: string;
};

/** The package's version; src/ and dist/ lie equally deep, so one relative path serves both. */
export const VERSION: string = manifest.version;
