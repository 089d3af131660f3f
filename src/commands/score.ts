import { readFile, stat } from 'node:fs/promises';
import { Problem } from '../problem.ts';
import { scoreRep } from '../score/score-rep.ts';
import { isUtf8 } from '../screens/look.ts';
import { overTime } from '../target/over-time.ts';
import { readRepCsv } from '../trace/read-rep-csv.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { refuseBinary } from './other-file.ts';
import { outcomeJson } from './score-json.ts';
import { scoreText } from './score-text.ts';
import { findTarget } from './target-files.ts';

/** An hour at 1 kHz with all channels is smaller; one rep is far smaller. */
const MOST_BYTES = 256 * 2 ** 20;

/** Scores one rep from a CSV file, outside any practice. */
export const command: Command = {
  name: 'score',
  summary: 'score one rep from a CSV file against a target',
  positionals: '',
  options: {
    target: { type: 'string', value: 'T', help: 'target by name, or the path of a target file' },
    trace: {
      type: 'string',
      value: 'FILE',
      help: 'CSV with a header: time_s,level and where known throttle,clutch,steering_deg',
    },
    json: { type: 'boolean', help: 'one JSON object instead of text' },
  },
  examples: [
    'ebbline score --target hairpin --trace rep.csv',
    'ebbline score --target ./my-corner.yaml --trace rep.csv --json',
  ],
  run: score,
};

async function score({ positionals, values }: CommandInput, context: CommandContext) {
  if (positionals.length > 0) throw usage(`unexpected argument ${JSON.stringify(positionals[0])}`);
  const trace = required(values.trace, '--trace');
  const target = overTime(await findTarget(required(values.target, '--target'), context.dataDir));
  const outcome = scoreRep(readRepCsv(await readTrace(trace), trace), target);
  if (values.json === true) {
    const of = { target: target.id, target_version: target.version, trace };
    context.out(`${JSON.stringify({ ...of, ...outcomeJson(outcome) })}\n`);
  } else {
    context.out(scoreText(outcome, target, isUtf8(context.env, process.platform)));
  }
  return 0;
}

function required(value: CommandInput['values'][string], option: string): string {
  if (typeof value === 'string' && value !== '') return value;
  throw usage(`no ${option} given`);
}

function usage(what: string): Problem {
  return new Problem(what, {
    where: 'score',
    next: 'Name both: ebbline score --target T --trace FILE',
    exitCode: 2,
  });
}

async function readTrace(path: string): Promise<string> {
  try {
    const found = await stat(path);
    if (found.isDirectory()) throw unreadable(path, 'this is a folder');
    if (found.size > MOST_BYTES) throw unreadable(path, 'the file is far too large for one rep');
    refuseBinary(path, 'a rep in CSV');
    return await readFile(path, 'utf8');
  } catch (error) {
    if (error instanceof Problem) throw error;
    const { code } = error as NodeJS.ErrnoException;
    throw unreadable(path, REASONS[code ?? ''] ?? `cannot be read (${code})`);
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'no permission to read',
};

function unreadable(path: string, what: string): Problem {
  return new Problem(what, { where: path, next: 'Check the path given with --trace.' });
}
