import { Problem } from '../problem.ts';
import { learnRepOf, sorted } from '../target/learn/learn-rep-of.ts';
import { FEWEST_REPS } from '../target/learn/learn-target.ts';
import type { LearnedSource, LearnedWords } from '../target/learn/learned-file.ts';
import type { LoggedZone } from '../trace/log/logged-zone.ts';
import type { ImportedTrace } from '../trace/log/zone-lines.ts';
import { zoneRecord } from '../trace/log/zone-record.ts';
import { zoneSpeeds } from '../trace/log/zone-speeds.ts';
import { barFromPascals } from '../units.ts';
import type { CommandContext, CommandInput } from './command.ts';
import { readTrace } from './trace-files.ts';
import { fullScaleAlone, givenFullScale } from './trace-full-scale.ts';
import { zonesNamed } from './zones-named.ts';

/** What is learned from, chosen and cut. */
export interface Chosen {
  readonly source: Omit<LearnedSource, 'day'>;
  readonly words: Pick<LearnedWords, 'cornerType' | 'fullScale'> & { readonly name: string };
  /** What the driver should look at before believing it. */
  readonly cautions: readonly string[];
}

/** Entry speeds further apart than this share of their mean may be of different corners. */
const ENTRY_RANGE_SHARE = 0.1;

/** The zones of an imported log that the options name. */
export async function chosenZones(
  name: string,
  input: CommandInput,
  context: CommandContext,
): Promise<Chosen> {
  const trace = await readTrace(name, context.dataDir);
  if (input.values.zone === undefined) throw noZones(trace);
  const zones = zonesNamed(input.values.zone, trace);
  const { brake, steeringPositive } = trace.summary;
  const fullScale = fullScaleAlone(givenFullScale(input, brake), trace);
  const taken = zones.map((zone) =>
    learnRepOf(zoneRecord(zone, brake, fullScale, steeringPositive), zone.number),
  );
  const numbers = zones.map(({ number }) => number).join(', ');
  return {
    source: {
      kind: 'trace',
      name,
      choice: `zones ${numbers} of ${name}, brake by ${brake}`,
      ...sorted(taken),
      feedback: null,
    },
    words: {
      name: `${name}, learned`,
      cornerType: 'logged corner',
      fullScale: standsFor(trace, fullScale),
    },
    cautions: [...speedCaution(zones), ...steeringCaution(trace)],
  };
}

function standsFor(
  { summary: { brake } }: ImportedTrace,
  fullScale: number,
): LearnedWords['fullScale'] {
  const rounded = (value: number): number => Number(value.toPrecision(6));
  if (brake === 'brake-level') return null;
  if (brake === 'pedal-force') return { pedal_force_n: rounded(fullScale) };
  return { pressure_bar: rounded(barFromPascals(fullScale)) };
}

function speedCaution(zones: readonly LoggedZone[]): string[] {
  const entries = zones.flatMap((zone) => zoneSpeeds(zone).entryMps ?? []);
  if (entries.length < 2)
    return ['The log has no speed: nothing says that these zones are one corner.'];
  const range = Math.max(...entries) - Math.min(...entries);
  const mean = entries.reduce((a, b) => a + b, 0) / entries.length;
  if (range <= ENTRY_RANGE_SHARE * mean) return [];
  return [
    `Entry speeds differ by ${Math.round((100 * range) / mean)} %: make sure that the zones are one corner.`,
  ];
}

function steeringCaution({ summary: { steeringPositive } }: ImportedTrace): string[] {
  return steeringPositive === null ? ['The log has no steering, so turn-in is not known.'] : [];
}

function noZones({ name, zones }: ImportedTrace): Problem {
  return new Problem('no --zone given', {
    where: name,
    next: `Name ${FEWEST_REPS} or more of its ${zones.length} that are the same corner, like --zone 1,4,7: ebbline trace zones ${name}`,
    exitCode: 2,
  });
}
