import { BLOCK_REPS, type DrillSetup, REP_TIMING, type RigAxes } from '../drill/drill-setup.ts';
import type { LivePlan } from '../drill/live/live-plan.ts';
import { zoneOf } from '../drill/live/zone-of.ts';
import { openHistory } from '../history/open-history.ts';
import type { HistoryStore } from '../history/store.ts';
import type { ReportSource } from '../input/report-source.ts';
import { brakeStepLevel } from '../input/rig/brake-step-level.ts';
import { calibrationId } from '../input/rig/calibration-id.ts';
import type { AxisRole, Rig } from '../input/rig/rig.ts';
import { createRigDecoder, type RigDecoder } from '../input/rig/rig-decoder.ts';
import { overTime } from '../target/over-time.ts';
import type { CommandContext } from './command.ts';
import { type Experience, experienceOf, PracticeLog } from './drill-history.ts';
import type { DrillOptions } from './drill-options.ts';
import type { DrillSubject } from './drill-subject.ts';
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
  subject: DrillSubject,
): Promise<Practice> {
  const { kind, rig } = rigSource;
  // A corner that cannot be driven is better said before anything is opened.
  const { target, live } = whatIsDrilled(subject, options, rig);
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
    { target, live },
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
  subject: Pick<DrillSetup, 'target' | 'live'>,
  experience: Experience,
): DrillSetup {
  return {
    ...subject,
    reps: options.reps ?? BLOCK_REPS,
    seed: seedOf(options),
    ...experience,
    feedback: null,
    asksRating: options.selfRating,
    axes: axesOf(rig),
    brakeStepLevel: brakeStepLevel(rig),
    timing: REP_TIMING,
  };
}

function axesOf({ axes }: Rig): RigAxes {
  const has = (role: AxisRole): boolean => axes.some((axis) => axis.role === role);
  return { throttle: has('throttle'), clutch: has('clutch'), steering: has('steering') };
}

function whatIsDrilled(
  subject: DrillSubject,
  options: DrillOptions,
  rig: Rig,
): Pick<DrillSetup, 'target' | 'live'> {
  if (subject.kind === 'target') return { target: overTime(subject.target), live: null };
  const live = livePlan(subject, options, rig);
  return { target: zoneOf(live, null, null).target, live };
}

function livePlan(
  { car, sheet, variant, notes }: Extract<DrillSubject, { kind: 'car' }>,
  { live: { stintS, callShare } }: DrillOptions,
  rig: Rig,
): LivePlan {
  const paddles = rig.buttons.some(({ action }) => action === 'downshift');
  return {
    car,
    sheet,
    variant,
    controls: { ...axesOf(rig), paddles },
    stintS,
    callShare,
    notes,
  };
}

/** A practice without a seed asked for differs from the last one. */
export function seedOf({ seed }: DrillOptions): number {
  return seed ?? Date.now() % 2 ** 31;
}

function brakeOf({ axes }: Rig): Rig['axes'][number] | undefined {
  return axes.find(({ role }) => role === 'brake');
}
