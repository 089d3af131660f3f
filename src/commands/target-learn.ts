import { localDate } from '../consistency/local-date.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { Problem } from '../problem.ts';
import { lookOf } from '../screens/look.ts';
import { wrapText } from '../screens/write-text.ts';
import { FEWEST_REPS, type LearnedCurve, learnTarget } from '../target/learn/learn-target.ts';
import {
  type LearnedSource,
  type LearnedWords,
  learnedFileText,
} from '../target/learn/learned-file.ts';
import { learnedJson } from '../target/learn/learned-json.ts';
import { learnedLines, tooFewWords } from '../target/learn/learned-text.ts';
import { readTarget } from '../target/read-target.ts';
import { trackWarnings } from '../target/trackability.ts';
import type { Command, CommandContext, CommandInput, OptionValue } from './command.ts';
import { chosenReps } from './learn-reps.ts';
import { type Chosen, chosenZones } from './learn-zones.ts';
import { withSchemaPlace } from './schema-place.ts';
import { targetDrawing } from './target-drawing.ts';
import { FULL_SCALE_OPTION } from './trace-full-scale.ts';
import { writeNewFile } from './write-new-file.ts';
import { zonedNow } from './zoned-now.ts';

const NAME = 'target learn';
const COLS = 80;
const USUAL_BEST = 10;
const MOST_BEST = 200;
const LONGEST_NAME = 40;
const LONGEST_TYPE = 30;

/** Learns a target from what was driven. */
export const command: Command = {
  name: NAME,
  summary: 'learn a target from logged braking zones or from your own best reps',
  positionals: '',
  options: {
    trace: { type: 'string', value: 'NAME', help: 'learn from zones of this imported log' },
    zone: {
      type: 'string',
      multiple: true,
      value: 'N[,N...]',
      help: 'numbers of zones of one corner, three or more, as `trace zones` lists them',
    },
    reps: { type: 'string', value: 'ID', help: 'learn from own reps of this corner or target' },
    best: {
      type: 'string',
      value: 'N',
      help: `how many of the best reps (default ${USUAL_BEST}, or all where there are fewer)`,
    },
    driver: { type: 'string', value: 'NAME', help: 'whose reps (default: who drove last)' },
    ...FULL_SCALE_OPTION,
    name: { type: 'string', value: 'TEXT', help: 'name of the target' },
    'corner-type': { type: 'string', value: 'TEXT', help: 'for example hairpin' },
    out: { type: 'string', value: 'FILE', help: 'write a target file; never over an existing one' },
    json: { type: 'boolean', help: 'one JSON object: the file, the curves, what was left out' },
  },
  examples: [
    'ebbline target learn --trace friday --zone 3,14,25 --full-scale 80 --out my-corner.yaml',
    'ebbline target learn --reps hairpin --best 10 --out my-hairpin.yaml',
  ],
  run: async (input, context) => learn(input, context, zonedNow()),
};

/** `target learn` with the time passed in. */
export async function learn(
  input: CommandInput,
  context: CommandContext,
  now: ZonedInstant,
): Promise<number> {
  const { source: from, words: usual, cautions } = await choose(input, context);
  const source: LearnedSource = { ...from, day: localDate(now) };
  if (source.used.length < FEWEST_REPS) throw tooFew(source);
  const words = wordsOf(input, usual);
  const curve = learnTarget(source.used);
  refuseLight(curve, source);
  const text = learnedFileText(curve, source, words);
  const out = textOf(input.values.out);
  // what is written must be what can be read
  const target = readTarget(text, out ?? 'learned.yaml');
  if (out !== null) await writeNewFile(out, withSchemaPlace(text, out), 'target');
  if (input.values.json === true)
    context.out(`${JSON.stringify({ ...learnedJson(curve, source, words), written_to: out })}\n`);
  else {
    const all = [...cautions, ...trackWarnings(target)];
    const look = lookOf(context.env, false, process.platform);
    const drawing = targetDrawing(target, look);
    context.out(page([headline(words.name, source), '', drawing, ''], curve, source, all));
  }
  context.err(out === null ? 'Not written: name a file with --out FILE.yaml.\n' : written(out));
  return 0;
}

function written(out: string): string {
  return `Written to ${out}; drill it with: ebbline drill --target ${out}\n`;
}

function page(
  head: readonly string[],
  curve: LearnedCurve,
  source: LearnedSource,
  cautions: readonly string[],
): string {
  const lines = [
    ...head,
    ...learnedLines(curve, source).flatMap((line) => hanging(line)),
    ...cautions.flatMap((caution) => wrapText(`Caution: ${caution}`, COLS)),
    ...wrapText(
      'What was done, not what could be done: a starting point, to be approached from the safe side.',
      COLS,
    ),
  ];
  return lines.map((line) => `${line}\n`).join('');
}

/** Longer lines go on below their own text. */
function hanging(line: string): readonly string[] {
  const [, label, rest] = /^(\S+(?: \S+)*\s{2,}|\s+)(.*)$/.exec(line) ?? [];
  if (label === undefined || rest === undefined || line.length <= COLS)
    return line === '' ? [''] : line.length <= COLS ? [line] : wrapText(line, COLS);
  return wrapText(rest, COLS - label.length).map(
    (part, i) => (i === 0 ? label : ' '.repeat(label.length)) + part,
  );
}

function headline(name: string, { kind, used, leftOut }: LearnedSource): string {
  const noun = kind === 'trace' ? 'logged braking zones' : 'reps';
  const left = leftOut.length === 0 ? '' : `, ${leftOut.length} left out`;
  return `${name}: from ${used.length} ${noun}${left}`;
}

async function choose(input: CommandInput, context: CommandContext): Promise<Chosen> {
  const { positionals, values } = input;
  if (positionals.length > 0) throw misuse(`${positionals[0]} belongs to no option`);
  const [trace, reps] = [textOf(values.trace), textOf(values.reps)];
  if (trace !== null && reps === null) {
    refuseOthers(values, ['best', 'driver'], '--reps');
    return chosenZones(trace, input, context);
  }
  if (trace === null && reps !== null) {
    refuseOthers(values, ['zone', 'full-scale'], '--trace');
    return chosenReps(
      { name: reps, driver: textOf(values.driver), best: bestOf(values.best) },
      context,
    );
  }
  throw misuse(trace === null ? 'nothing to learn from' : '--trace and --reps together');
}

function refuseOthers(values: CommandInput['values'], names: readonly string[], of: string): void {
  const given = names.find((name) => values[name] !== undefined);
  if (given !== undefined) throw misuse(`--${given} belongs to ${of}`);
}

function bestOf(value: OptionValue): number {
  if (value === undefined) return USUAL_BEST;
  const best = /^\d+$/.test(String(value)) ? Number(value) : 0;
  if (best >= FEWEST_REPS && best <= MOST_BEST) return best;
  throw misuse(
    `--best is ${JSON.stringify(value)}`,
    `Say a whole number from ${FEWEST_REPS} to ${MOST_BEST}.`,
  );
}

function wordsOf({ values }: CommandInput, usual: Chosen['words']): LearnedWords {
  return {
    ...usual,
    name: words(values, 'name', usual.name, LONGEST_NAME),
    cornerType: words(values, 'corner-type', usual.cornerType, LONGEST_TYPE),
  };
}

/** A name that was given is taken or refused; one made up is cut. */
function words(
  values: CommandInput['values'],
  option: string,
  usual: string,
  most: number,
): string {
  const given = textOf(values[option]);
  if (given === null) return [...usual].slice(0, most).join('').trim();
  if (given.trim() !== '' && given.length <= most && !/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u.test(given))
    return given;
  throw misuse(`--${option} is ${JSON.stringify(given)}`, `Give 1 to ${most} plain characters.`);
}

function tooFew(source: LearnedSource): Problem {
  return new Problem(tooFewWords(source), {
    where: source.name,
    next:
      source.kind === 'trace'
        ? `Name more zones of the same corner: ebbline trace zones ${source.name}`
        : 'Drive more of them, or learn from a log with --trace.',
  });
}

/** No target has a peak below a tenth. */
function refuseLight({ phases }: LearnedCurve, { name }: LearnedSource): void {
  if (phases.peakLevel >= 0.1) return;
  throw new Problem(`the peak is only ${(100 * phases.peakLevel).toFixed(1)} % of full scale`, {
    where: name,
    next: 'A target needs 10 %. Give the full scale that level 1 stands for with --full-scale.',
  });
}

function misuse(what: string, next = `See \`ebbline ${NAME} --help\`.`): Problem {
  return new Problem(what, { where: NAME, next, exitCode: 2 });
}

function textOf(value: OptionValue): string | null {
  return typeof value === 'string' ? value : null;
}
