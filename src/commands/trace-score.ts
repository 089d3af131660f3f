import { Problem } from '../problem.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import { scoreRep } from '../score/score-rep.ts';
import { isUtf8 } from '../screens/look.ts';
import { overTime } from '../target/over-time.ts';
import type { LoggedZone } from '../trace/log/logged-zone.ts';
import type { ImportedTrace } from '../trace/log/zone-lines.ts';
import { zoneRecord } from '../trace/log/zone-record.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { outcomeJson } from './score-json.ts';
import { scoreText } from './score-text.ts';
import { findTarget } from './target-files.ts';
import { readTrace } from './trace-files.ts';
import { FULL_SCALE_OPTION, fullScaleFor, givenFullScale } from './trace-full-scale.ts';

/** Scores one zone of an imported log as the drill scores a rep. */
export const command: Command = {
  name: 'trace score',
  summary: 'score a logged braking zone against a target',
  positionals: 'NAME',
  options: {
    zone: { type: 'string', value: 'N', help: 'number of the zone in `trace zones`' },
    target: { type: 'string', value: 'T', help: 'target by name, or the path of a target file' },
    ...FULL_SCALE_OPTION,
    json: { type: 'boolean', help: 'one JSON object instead of text' },
  },
  examples: ['ebbline trace score friday --zone 3 --target hairpin --full-scale 80'],
  run: score,
};

async function score(input: CommandInput, context: CommandContext): Promise<number> {
  const { positionals, values } = input;
  if (positionals.length !== 1) throw usage('name one trace');
  if (typeof values.target !== 'string') throw usage('no --target given');
  const trace = await readTrace(positionals[0]!, context.dataDir);
  const target = overTime(await findTarget(values.target, context.dataDir));
  const zone = zoneOf(trace, values.zone);
  const { brake, steeringPositive } = trace.summary;
  const fullScale = fullScaleFor(givenFullScale(input, brake), trace, target);
  const record = zoneRecord(zone, brake, fullScale, steeringPositive);
  const outcome = withoutCue(scoreRep(record, target));
  if (values.json === true) {
    const of = { target: target.id, target_version: target.version, trace: trace.name };
    context.out(`${JSON.stringify({ ...of, zone: zone.number, ...outcomeJson(outcome) })}\n`);
  } else context.out(scoreText(outcome, target, isUtf8(context.env, process.platform)));
  return 0;
}

/** A log has no cue, so nothing is early or late to the start. */
function withoutCue<T extends RepOutcome>(outcome: T): T {
  const { side } = outcome;
  return side === null ? outcome : { ...outcome, side: { ...side, startErrorS: null } };
}

function zoneOf(trace: ImportedTrace, wanted: CommandInput['values'][string]): LoggedZone {
  const zone = trace.zones.find(({ number }) => `${number}` === wanted);
  if (zone !== undefined) return zone;
  if (wanted === undefined) throw usage('no --zone given');
  throw new Problem(`there is no zone ${String(wanted)} in ${trace.name}`, {
    next: `It has ${trace.zones.length}: ebbline trace zones ${trace.name}`,
  });
}

function usage(what: string): Problem {
  return new Problem(what, {
    where: 'trace score',
    next: 'Name all: ebbline trace score NAME --zone N --target T',
    exitCode: 2,
  });
}
