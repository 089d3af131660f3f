import { Problem } from '../problem.ts';
import { idOfFile } from '../profile/id-of-file.ts';
import { printable } from '../profile/printable.ts';
import type { LogSummary } from '../trace/log/log-settings.ts';
import type { Notice } from '../trace/log/notices.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import type { Surroundings } from './counted-job.ts';
import { Interrupted, interruptible } from './interrupted.ts';
import { ProgressLine, STDERR_PROGRESS } from './progress-line.ts';
import { importTrace, type TraceImport } from './trace-files.ts';
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
  run: (input, context) =>
    interruptible((stop) => traceImport(input, context, { output: STDERR_PROGRESS, stop })),
};

/** `trace import` with its surroundings passed in. */
export async function traceImport(
  input: CommandInput,
  context: CommandContext,
  around: Omit<Surroundings, 'nowUtcMs'>,
): Promise<number> {
  const path = onePath(input);
  const name = traceName(input, path);
  try {
    const summary = await keepZones({ path, name, wish: logWish(input) }, context.dataDir, around);
    tell(summary, { path, name, isJson: input.values.json === true }, context);
    return 0;
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    context.err(`ebbline: interrupted; nothing of ${path} was kept\n`);
    return 130;
  }
}

const MEGABYTE = 1e6;

/** Imports while a line says how far it is. @throws Interrupted when asked to stop; a trace of that name stays then */
async function keepZones(
  wanted: TraceImport,
  dataDir: string,
  { output, stop }: Omit<Surroundings, 'nowUtcMs'>,
): Promise<LogSummary> {
  let line: ProgressLine | null = null;
  const onRead = (bytes: number, ofBytes: number): void => {
    line ??= new ProgressLine(output, 'MB', Math.ceil(ofBytes / MEGABYTE));
    line.show(Math.floor(bytes / MEGABYTE));
    if (stop.asked) throw new Interrupted();
  };
  try {
    return await importTrace({ ...wanted, onRead }, dataDir);
  } finally {
    (line as ProgressLine | null)?.end();
  }
}

function tell(
  summary: LogSummary,
  {
    path,
    name,
    isJson,
  }: { readonly path: string; readonly name: string; readonly isJson: boolean },
  context: CommandContext,
): void {
  if (isJson)
    context.out(`${JSON.stringify({ trace: name, source: path, ...summaryJson(summary) })}\n`);
  else {
    context.out(summaryText(name, summary));
    for (const notice of summary.notices) context.err(`${noticeText(path, notice)}\n`);
  }
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
