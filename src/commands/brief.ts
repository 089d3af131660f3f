import { localDate } from '../consistency/local-date.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { CAUTIONS } from '../drill/cautions.ts';
import { openExistingHistory } from '../history/open-history.ts';
import type { Brief } from '../report/brief/brief.ts';
import { briefCorner } from '../report/brief/brief-corner.ts';
import { briefHtml } from '../report/brief/brief-html.ts';
import { briefJson } from '../report/brief/brief-json.ts';
import { briefMarkdown } from '../report/brief/brief-markdown.ts';
import { briefText } from '../report/brief/brief-text.ts';
import { briefSource } from './brief-source.ts';
import { type BriefSubject, briefSubject } from './brief-subject.ts';
import type { Command, CommandContext, CommandInput, OptionValue } from './command.ts';
import { driverOption } from './driver-option.ts';
import { misuseOf } from './misuse-of.ts';
import { textOption } from './option-value.ts';
import { refuseUnknownDriver } from './refuse-unknown-driver.ts';
import { writeNewFile } from './write-new-file.ts';
import { zonedNow } from './zoned-now.ts';

const misuse = misuseOf('brief');

const FORMATS: Readonly<Record<string, (brief: Brief) => string>> = {
  text: briefText,
  markdown: briefMarkdown,
  html: briefHtml,
};
const UNITS = 'Errors and levels in % of full scale; places along the line.';

/** Writes the page for the test day. */
export const command: Command = {
  name: 'brief',
  summary: 'the page for the test day: targets, gears, bumps, figures, notes',
  positionals: 'EVENT|CORNER...',
  options: {
    car: {
      type: 'string',
      value: 'CAR',
      help: "id of a car or path of its file (default the event's)",
    },
    variant: {
      type: 'string',
      value: 'NAME',
      help: "variant of the numbers (default the first, or the event's)",
    },
    driver: { type: 'string', value: 'NAME', help: 'whose figures and notes (default: all notes)' },
    format: { type: 'string', value: Object.keys(FORMATS).join('|'), help: 'default text' },
    out: { type: 'string', value: 'FILE', help: 'write a file; never over an existing one' },
    json: { type: 'boolean', help: 'one JSON object' },
  },
  apart: [{ one: 'format', others: ['json'], because: '--json is a format of its own.' }],
  examples: [
    'ebbline brief sallow-fen --format html --out brief.html',
    'ebbline brief sallow-fen --variant race',
    'ebbline brief kiln-hairpin coil-bend --car prototype',
  ],
  run: (input, context) => brief(input, context, zonedNow()),
};

/** `brief` with the time passed in. */
export async function brief(
  { positionals, values }: CommandInput,
  context: CommandContext,
  now: ZonedInstant,
): Promise<number> {
  const write = formatOf(values.format);
  const driver = driverOption(values.driver, 'brief --driver');
  const today = localDate(now);
  const wish = { car: textOption(values.car), variant: textOption(values.variant) };
  const subject = await briefSubject(positionals, wish, today, context.dataDir);
  const history = openExistingHistory(context.dataDir);
  try {
    if (history !== null && history.notice !== null) context.err(`ebbline: ${history.notice}\n`);
    refuseUnknownDriver(driver, history, 'brief --driver');
    const sources = subject.zones.map(({ sheet, carFile, variant }) =>
      briefSource(sheet, { carFile, variant, driver }, history),
    );
    const page: Brief = {
      title: subject.title,
      subtitle: [subject.about, `Made on ${today}.`, UNITS].join(' ').trimStart(),
      corners: sources.map((source) => briefCorner(source, context.units)),
      cautions: CAUTIONS,
    };
    const text =
      values.json === true
        ? `${JSON.stringify({ ...eventOf(subject), ...briefJson(sources), cautions: CAUTIONS })}\n`
        : write(page);
    await put(text, textOption(values.out), context);
  } finally {
    history?.close();
  }
  return 0;
}

function eventOf({ event }: BriefSubject): object {
  return {
    event: event?.id ?? null,
    date: event?.date ?? null,
    days_left: event?.daysLeft ?? null,
  };
}

async function put(text: string, path: string | null, context: CommandContext): Promise<void> {
  if (path === null) {
    context.out(text);
    return;
  }
  await writeNewFile(path, text, 'brief');
  context.err(`Written to ${path}.\n`);
}

function formatOf(value: OptionValue): (brief: Brief) => string {
  const name = textOption(value) ?? 'text';
  const write = Object.hasOwn(FORMATS, name) ? FORMATS[name] : undefined;
  if (write !== undefined) return write;
  throw misuse(
    `there is no format ${JSON.stringify(name)}`,
    `Say one of: ${Object.keys(FORMATS).join(', ')}.`,
  );
}
