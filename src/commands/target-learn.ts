import { localDate } from '../consistency/local-date.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { Problem } from '../problem.ts';
import { lookOf } from '../screens/look.ts';
import { FEWEST_REPS, type LearnedCurve, learnTarget } from '../target/learn/learn-target.ts';
import { type LearnedSource, learnedFileText } from '../target/learn/learned-file.ts';
import { learnedJson } from '../target/learn/learned-json.ts';
import { tooFewWords } from '../target/learn/learned-text.ts';
import { readTarget } from '../target/read-target.ts';
import { trackWarnings } from '../target/trackability.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { learnPage } from './learn-page.ts';
import { chosenToLearn, learnedWords, USUAL_BEST } from './learn-wish.ts';
import { textOption } from './option-value.ts';
import { withSchemaPlace } from './schema-place.ts';
import { targetDrawing } from './target-drawing.ts';
import { FULL_SCALE_OPTION } from './trace-full-scale.ts';
import { writeNewFile } from './write-new-file.ts';
import { zonedNow } from './zoned-now.ts';

const NAME = 'target learn';

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
  const { source: from, words: usual, cautions } = await chosenToLearn(input, context);
  const source: LearnedSource = { ...from, day: localDate(now) };
  if (source.used.length < FEWEST_REPS) throw tooFew(source);
  const words = learnedWords(input, usual);
  const curve = learnTarget(source.used);
  refuseLight(curve, source);
  const text = learnedFileText(curve, source, words);
  const out = textOption(input.values.out);
  // what is written must be what can be read
  const target = readTarget(text, out ?? 'learned.yaml');
  if (out !== null) await writeNewFile(out, withSchemaPlace(text, out), 'target');
  if (input.values.json === true)
    context.out(`${JSON.stringify({ ...learnedJson(curve, source, words), written_to: out })}\n`);
  else {
    const all = [...cautions, ...trackWarnings(target)];
    const look = lookOf(context.env, false, process.platform);
    const drawing = targetDrawing(target, look);
    context.out(learnPage(words.name, drawing, curve, source, all));
  }
  context.err(out === null ? 'Not written: name a file with --out FILE.yaml.\n' : written(out));
  return 0;
}

function written(out: string): string {
  return `Written to ${out}; drill it with: ebbline drill --target ${out}\n`;
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
