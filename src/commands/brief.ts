import { localDate } from '../consistency/local-date.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { openExistingHistory } from '../history/open-history.ts';
import { Problem } from '../problem.ts';
import type { Brief } from '../report/brief/brief.ts';
import { briefCorner } from '../report/brief/brief-corner.ts';
import { briefHtml } from '../report/brief/brief-html.ts';
import { briefJson } from '../report/brief/brief-json.ts';
import { briefMarkdown } from '../report/brief/brief-markdown.ts';
import { briefText } from '../report/brief/brief-text.ts';
import { CAUTIONS } from '../screens/cautions.ts';
import { briefSource } from './brief-source.ts';
import { findCar } from './car-files.ts';
import type { Command, CommandContext, CommandInput, OptionValue } from './command.ts';
import { findCorner } from './corner-files.ts';
import { writeNewFile } from './write-new-file.ts';
import { zonedNow } from './zoned-now.ts';

const FORMATS: Readonly<Record<string, (brief: Brief) => string>> = {
  text: briefText,
  markdown: briefMarkdown,
  html: briefHtml,
};
/** One page holds no more. */
const MOST_CORNERS = 8;

/** Writes the page for the test day. */
export const command: Command = {
  name: 'brief',
  summary: 'the page for the test day: targets, gears, bumps, figures, notes',
  positionals: 'CORNER...',
  options: {
    car: { type: 'string', value: 'CAR', help: 'id of a car or path of its file' },
    variant: { type: 'string', value: 'NAME', help: 'variant of the numbers (default the first)' },
    driver: { type: 'string', value: 'NAME', help: 'whose figures and notes (default: all notes)' },
    format: { type: 'string', value: Object.keys(FORMATS).join('|'), help: 'default text' },
    out: { type: 'string', value: 'FILE', help: 'write a file; never over an existing one' },
    json: { type: 'boolean', help: 'one JSON object' },
  },
  examples: [
    'ebbline brief kiln-hairpin coil-bend --car prototype',
    'ebbline brief kiln-hairpin --car gt --format html --out brief.html',
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
  const carFile = await findCar(carName(values.car), context.dataDir);
  const sheets = await Promise.all(
    cornersOf(positionals).map((name) => findCorner(name, context.dataDir)),
  );
  const history = openExistingHistory(context.dataDir);
  try {
    if (history !== null && history.notice !== null) context.err(`ebbline: ${history.notice}\n`);
    const chosen = { carFile, variant: textOf(values.variant), driver: textOf(values.driver) };
    const sources = sheets.map((sheet) => briefSource(sheet, chosen, history));
    const page: Brief = {
      title: `Brief: ${carFile.name}`,
      subtitle: `Made on ${localDate(now)}. Errors and levels in % of full scale; places along the line.`,
      corners: sources.map((source) => briefCorner(source, context.units)),
      cautions: CAUTIONS,
    };
    const text = values.json === true ? `${JSON.stringify(briefJson(sources))}\n` : write(page);
    await put(text, textOf(values.out), context);
  } finally {
    history?.close();
  }
  return 0;
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
  const name = textOf(value) ?? 'text';
  const write = Object.hasOwn(FORMATS, name) ? FORMATS[name] : undefined;
  if (write !== undefined) return write;
  throw misuse(
    `there is no format ${JSON.stringify(name)}`,
    `Say one of: ${Object.keys(FORMATS).join(', ')}.`,
  );
}

function cornersOf(names: readonly string[]): readonly string[] {
  if (names.length === 0)
    throw misuse('no corner named', 'Name up to eight; `ebbline corner list` lists them.');
  if (names.length > MOST_CORNERS)
    throw misuse(`${names.length} corners do not fit on a page`, 'Name up to eight.');
  return names;
}

function carName(value: OptionValue): string {
  const name = textOf(value);
  if (name !== null) return name;
  throw misuse('no car named', 'Add --car with an id or a path; `ebbline car list` lists ids.');
}

function textOf(value: OptionValue): string | null {
  return typeof value === 'string' ? value : null;
}

function misuse(what: string, next: string): Problem {
  return new Problem(what, { where: 'brief', next, exitCode: 2 });
}
