import { Problem } from '../problem.ts';
import type { KeyPoints } from '../score/rep-score.ts';
import { zoneKeys } from '../score/zone-keys.ts';
import type { LoggedZone } from '../trace/log/logged-zone.ts';
import { type SpeedCheck, speedCheck } from '../trace/log/speed-check.ts';
import type { ImportedTrace } from '../trace/log/zone-lines.ts';
import { zoneRecord } from '../trace/log/zone-record.ts';
import { type ZoneSpeeds, zoneSpeeds } from '../trace/log/zone-speeds.ts';
import { speedText } from '../unit-text.ts';
import { barFromPascals } from '../units.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { textColumns } from './text-columns.ts';
import { readTrace, traceNames } from './trace-files.ts';
import { brakeText, FULL_SCALE_OPTION, givenFullScale } from './trace-full-scale.ts';

/** Lists imported logs, or the zones of one. */
export const command: Command = {
  name: 'trace zones',
  summary: 'list the braking zones of imported logs with their key points',
  positionals: '[NAME]',
  options: {
    ...FULL_SCALE_OPTION,
    json: { type: 'boolean', help: 'one JSON object instead of a table' },
  },
  examples: ['ebbline trace zones', 'ebbline trace zones friday --json'],
  run: list,
};

async function list(input: CommandInput, context: CommandContext): Promise<number> {
  const [name, ...others] = input.positionals;
  if (others.length > 0)
    throw new Problem('more than one trace named', {
      where: 'trace zones',
      next: 'Name one trace, or none for the list.',
      exitCode: 2,
    });
  if (name === undefined) return listTraces(input, context);
  const trace = await readTrace(name, context.dataDir);
  const zones = describedZones(trace, input);
  if (input.values.json === true)
    context.out(
      `${JSON.stringify({ trace: name, brake: trace.summary.brake, zones: zones.map((zone) => zoneJson(zone, trace)) })}\n`,
    );
  else context.out(zonesText(zones, trace, context));
  return 0;
}

async function listTraces({ values }: CommandInput, context: CommandContext): Promise<number> {
  const names = await traceNames(context.dataDir);
  if (values.json === true) context.out(`${JSON.stringify({ traces: names })}\n`);
  else if (names.length === 0)
    context.out('No logs are imported yet: take one in with `ebbline trace import FILE.csv`.\n');
  else context.out(`${names.join('\n')}\n`);
  return 0;
}

interface DescribedZone extends ZoneSpeeds {
  readonly zone: LoggedZone;
  readonly keys: KeyPoints | null;
  readonly peak: number;
  readonly check: SpeedCheck | null;
}

/** Key points need a full scale: the one given, else the hardest braking of the log. */
function describedZones(trace: ImportedTrace, input: CommandInput): DescribedZone[] {
  const { brake, steeringPositive } = trace.summary;
  const hardest = Math.max(...trace.zones.map(({ samples }) => Math.max(...samples.get(brake)!)));
  const fullScale = givenFullScale(input, brake) ?? (brake === 'brake-level' ? 1 : hardest);
  return trace.zones.map((zone) => {
    const keys = zoneKeys(zoneRecord(zone, brake, fullScale, steeringPositive));
    const speeds = zoneSpeeds(zone);
    const peak = (keys?.peakLevel ?? 0) * fullScale;
    return { zone, keys, peak, ...speeds, check: speedCheck(zone) };
  });
}

const seconds = (value: number | null | undefined): string =>
  value === null || value === undefined ? '-' : value.toFixed(2);

function zonesText(
  zones: readonly DescribedZone[],
  { summary, source }: ImportedTrace,
  { units }: CommandContext,
): string {
  if (zones.length === 0) return 'No braking zones were found in this log.\n';
  const header = [
    'zone',
    'lap',
    'at s',
    'entry',
    'slowest',
    'peak',
    'onset',
    'release',
    'half',
    'off',
    'speed',
  ];
  const speed = (mps: number | null): string => (mps === null ? '-' : speedText(mps, units));
  const rows = zones.map(({ zone, keys, peak, entryMps, slowestMps, check }) => [
    `${zone.number}`,
    zone.lap === null ? '-' : `${zone.lap}`,
    zone.startS.toFixed(1),
    speed(entryMps),
    speed(slowestMps),
    brakeText(summary.brake, peak),
    seconds(keys?.onsetS),
    seconds(keys?.startOfReleaseS),
    seconds(keys?.halfReleaseS),
    seconds(keys?.brakeOffS),
    checkText(check),
  ]);
  const notes = [
    `${source}, brake by ${summary.brake}`,
    'onset, release (its start), half and off in seconds from where the brake goes on; release and half are falls to 90 and 50 % of the peak',
    'speed: what the speed signal lost against its integrated deceleration',
  ];
  return `${textColumns([header, ...rows])}${notes.map((note) => `${note}\n`).join('')}`;
}

function checkText(check: SpeedCheck | null): string {
  if (check === null) return 'not checked';
  if (check.plausible) return 'plausible';
  return `doubtful: ${check.measuredMps.toFixed(1)} against ${check.integratedMps.toFixed(1)} m/s`;
}

function zoneJson(
  { zone, keys, peak, ...rest }: DescribedZone,
  { summary }: ImportedTrace,
): object {
  const pressure = summary.brake === 'brake-front' || summary.brake === 'brake-rear';
  return {
    zone: zone.number,
    lap: zone.lap,
    line: zone.line,
    start_s: zone.startS,
    entry_speed_mps: rest.entryMps,
    slowest_speed_mps: rest.slowestMps,
    peak_level: summary.brake === 'brake-level' ? peak : null,
    peak_pressure_bar: pressure ? barFromPascals(peak) : null,
    peak_pedal_force_n: summary.brake === 'pedal-force' ? peak : null,
    onset_s: keys?.onsetS ?? null,
    near_peak_s: keys?.nearPeakS ?? null,
    peak_s: keys?.peakS ?? null,
    start_of_release_s: keys?.startOfReleaseS ?? null,
    half_release_s: keys?.halfReleaseS ?? null,
    final_release_s: keys?.finalReleaseS ?? null,
    brake_off_s: keys?.brakeOffS ?? null,
    gaps_count: zone.gaps.length,
    speed_lost_mps: rest.check?.measuredMps ?? null,
    integrated_speed_lost_mps: rest.check?.integratedMps ?? null,
    speed_plausible: rest.check?.plausible ?? null,
  };
}
