import { BLOCK_REPS, type DrillSetup, REP_TIMING } from '../drill/drill-setup.ts';
import { openHistory } from '../history/open-history.ts';
import type { HistoryStore } from '../history/store.ts';
import type { ReportSource } from '../input/report-source.ts';
import { brakeStepLevel } from '../input/rig/brake-step-level.ts';
import { calibrationId } from '../input/rig/calibration-id.ts';
import type { AxisRole, Rig } from '../input/rig/rig.ts';
import { createRigDecoder, type RigDecoder } from '../input/rig/rig-decoder.ts';
import { overTime } from '../target/over-time.ts';
import type { Target } from '../target/target.ts';
import type { CommandContext } from './command.ts';
import { type Experience, experienceOf, PracticeLog } from './drill-history.ts';
import type { DrillOptions } from './drill-options.ts';
import type { RigSource } from './rig-source.ts';

/** Name in the history of whoever always drives here. */
export const LOCAL_DRIVER = 'driver';

/** Everything a practice runs on, opened. */
export interface Practice {
  readonly source: ReportSource;
  readonly decoder: RigDecoder;
  readonly setup: DrillSetup;
  readonly log: PracticeLog;
  readonly store: HistoryStore;
  readonly driver: string;
}

/** Whose reps these are: a simulated driver never drives into a person's history. */
export function driverName({ driver }: DrillOptions, { kind, source }: RigSource): string {
  if (driver !== null) return driver;
  return kind === 'virtual' ? source.label : LOCAL_DRIVER;
}

/** @throws Problem where the history does not open or the rig does not fit the source; nothing is left open then. */
export async function openPractice(
  options: DrillOptions,
  context: CommandContext,
  rigSource: RigSource,
  target: Target,
): Promise<Practice> {
  const { kind, rig } = rigSource;
  const decoder = createRigDecoder(rig, rigSource.source.devices);
  const source = await recorded(options, rigSource);
  const store = openHistory(context.dataDir);
  const driver = driverName(options, rigSource);
  const log = new PracticeLog(
    store,
    {
      driver,
      source: kind,
      foot: options.foot ?? rig.foot,
      footwear: options.footwear ?? rig.footwear,
      calibrationId: calibrationId(rig),
      sensor: brakeOf(rig)?.calibration.sensor ?? 'unknown',
      seed: options.seed,
    },
    options.condition,
  );
  const setup = drillSetup(
    options,
    rig,
    overTime(target),
    experienceOf(store, driver, target, Date.now()),
  );
  return { source, decoder, setup, log, store, driver };
}

async function recorded(
  { record }: DrillOptions,
  { source, rig }: RigSource,
): Promise<ReportSource> {
  if (record === null) return source;
  const { recordReports } = await import('../input/recording/record-reports.ts');
  return recordReports(source, record, rig);
}

function drillSetup(
  options: DrillOptions,
  rig: Rig,
  target: Target,
  experience: Experience,
): DrillSetup {
  const has = (role: AxisRole): boolean => rig.axes.some((axis) => axis.role === role);
  return {
    target,
    reps: options.reps ?? BLOCK_REPS,
    seed: seedOf(options),
    ...experience,
    feedback: null,
    axes: { throttle: has('throttle'), clutch: has('clutch'), steering: has('steering') },
    brakeStepLevel: brakeStepLevel(rig),
    timing: REP_TIMING,
  };
}

/** A practice without a seed asked for differs from the last one. */
export function seedOf({ seed }: DrillOptions): number {
  return seed ?? Date.now() % 2 ** 31;
}

function brakeOf({ axes }: Rig): Rig['axes'][number] | undefined {
  return axes.find(({ role }) => role === 'brake');
}
