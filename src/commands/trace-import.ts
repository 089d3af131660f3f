import { Problem } from '../problem.ts';
import { idOfFile } from '../profile/id-of-file.ts';
import { printable } from '../profile/printable.ts';
import type { LogSummary } from '../trace/log/log-settings.ts';
import type { Notice } from '../trace/log/notices.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { importTrace } from './trace-files.ts';
import { logWish, WISH_OPTIONS } from './trace-wish.ts';

/** Cuts the braking zones out of a logged CSV file and keeps them. */
export const command: Command = {
  name: 'trace import',
  summary: 'cut the braking zones out of a logged CSV file',
  positionals: 'FILE.csv',
  options: {
    name: { type: 'string', value: 'NAME', help: 'name of the trace (default: that of the file)' },
    ...WISH_OPTIONS,
    json: { type: 'boolean', help: 'one JSON object instead of lines' },
  },
  examples: [
    'ebbline trace import friday.csv',
    'ebbline trace import friday.csv --column brake-front=P3 --unit brake-front=bar',
  ],
  run: load,
};

async function load(input: CommandInput, context: CommandContext): Promise<number> {
  const path = onePath(input);
  const name = traceName(input, path);
  const summary = await importTrace({ path, name, wish: logWish(input) }, context.dataDir);
  if (input.values.json === true)
    context.out(`${JSON.stringify({ trace: name, source: path, ...summaryJson(summary) })}\n`);
  else {
    context.out(summaryText(name, summary));
    for (const notice of summary.notices) context.err(`${noticeText(path, notice)}\n`);
  }
  return 0;
}

function onePath({ positionals }: CommandInput): string {
  if (positionals.length === 1) return positionals[0]!;
  throw usage(positionals.length === 0 ? 'no file given' : 'more than one file given');
}

function traceName({ values }: CommandInput, path: string): string {
  const wanted = values.name ?? idOfFile(path).replace(/\.[^.]*$/, '');
  if (typeof wanted === 'string' && /^[\p{L}\p{N}][\p{L}\p{N} ._-]{0,99}$/u.test(wanted))
    return wanted;
  throw usage(`${JSON.stringify(wanted)} cannot be the name of a trace; use --name`);
}

function usage(what: string): Problem {
  return new Problem(what, {
    where: 'trace import',
    next: 'Give one log: ebbline trace import FILE.csv',
    exitCode: 2,
  });
}

function summaryText(name: string, { rows, durationS, stepS, zones, brake, columns }: LogSummary) {
  const read = columns.map((column) => {
    const unit = column.unit === '' ? '' : ` in ${printable(column.unit)}`;
    return `${column.role} from #${column.index + 1} ${printable(column.name)}${unit}`;
  });
  return [
    `trace ${name}: ${zones} braking ${zones === 1 ? 'zone' : 'zones'} in ${durationS.toFixed(1)} s, ${rows} rows at ${(1 / stepS).toFixed(0)} Hz, judged by ${brake}`,
    ...read.map((line) => `  ${line}`),
    '',
  ].join('\n');
}

function noticeText(path: string, { what, count, line }: Notice): string {
  const place = line === null ? path : `${path}:${line}`;
  return `${place}: ${what}${count > 1 ? ` (${count} times, here first)` : ''}`;
}

function summaryJson(summary: LogSummary): object {
  return {
    rows_count: summary.rows,
    zones_count: summary.zones,
    duration_s: summary.durationS,
    step_s: summary.stepS,
    brake: summary.brake,
    steering_positive: summary.steeringPositive,
    columns: summary.columns.map(({ role, index, name, unit }) => ({
      role,
      column: index + 1,
      name,
      unit,
    })),
    notices: summary.notices,
  };
}
