import { keyNumbers } from '../target/key-numbers.ts';
import type { Target } from '../target/target.ts';
import type { Command } from './command.ts';
import { type ProfileList, printProfileList } from './list-profiles.ts';
import { TARGET_FILES } from './target-files.ts';

const LIST: ProfileList<Target> = {
  heads: ['id', 'name', 'corner', 'peak', 'release'],
  cells: ({ id, value }) => [
    id,
    value.name,
    value.cornerType,
    `${(100 * value.peakLevel).toFixed(0)} %`,
    `${keyNumbers(value).releaseS.toFixed(1)} s`,
  ],
  json: ({ id, value }) => ({
    id,
    name: value.name,
    corner_type: value.cornerType,
    domain: value.domain,
    version: value.version,
    peak_level: value.peakLevel,
    release_s: Number(keyNumbers(value).releaseS.toFixed(3)),
  }),
};

/** Lists the targets that can be named by id. */
export const command: Command = {
  name: 'target list',
  summary: 'list the targets that can be named by id',
  positionals: '',
  options: { json: { type: 'boolean', help: 'one JSON object instead of a table' } },
  examples: ['ebbline target list', 'ebbline target list --json'],
  run: (input, context) => printProfileList(TARGET_FILES, LIST, input, context),
};
