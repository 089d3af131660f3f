import * as library from 'yaml';

/**
 * The YAML library. The build puts in place of this file one that loads it when it is first asked for: loading takes longer
 * than most commands work, and those that read bundled profiles alone never need it (see `build/precompile-profiles.ts`).
 */
export function yamlLibrary(): typeof library {
  return library;
}
