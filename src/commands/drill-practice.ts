import { type DisplaySettings, PLAIN_DISPLAY } from '../drill/display/display-settings.ts';
import { BLOCK_REPS, type DrillSetup, REP_TIMING } from '../drill/drill-setup.ts';
import { openHistory } from '../history/open-history.ts';
import type { HistoryStore, PracticeStart, SourceKind } from '../history/store.ts';
import type { ReportSource } from '../input/report-source.ts';
import { brakeStepLevel } from '../input/rig/brake-step-level.ts';
import { calibrationId } from '../input/rig/calibration-id.ts';
import { fullScaleNewtons } from '../input/rig/load-newtons.ts';
import type { Rig } from '../input/rig/rig.ts';
import { createRigDecoder, type RigDecoder } from '../input/rig/rig-decoder.ts';
import type { CommandContext } from './command.ts';
import type { DrillOptions } from './drill-options.ts';
import type { DrillSubject } from './drill-subject.ts';
import { type Experience, experienceOf } from './experience.ts';
import { forceRemark } from './force-remark.ts';
import { pressableButtons } from './list-buttons.ts';
import { LOCAL_DRIVER } from './local-driver.ts';
import { PracticeLog } from './practice-log.ts';
import { prepareDrill } from './prepared-drill.ts';
import type { RigSource } from './rig-source.ts';
import { axesOf } from './what-is-drilled.ts';
import { zonedNow } from './zoned-now.ts';

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
  display: DisplaySettings = PLAIN_DISPLAY,
): Promise<Practice> {
  const { rig } = rigSource;
  // A corner that cannot be driven is better said before anything is opened.
  const prepared = prepareDrill(subject, options, rig);
  const decoder = createRigDecoder(rig, rigSource.source.devices);
  const source = await recorded(options, rigSource);
  const store = openHistory(context.dataDir);
  const driver = driverName(options, rigSource);
  const start = practiceStart(options, rig, rigSource.kind, driver);
  const log = new PracticeLog(store, start, options.condition);
  const experience = experienceOf(store, driver, prepared.target, Date.now());
  const ownFullScaleN = ownFullScale(rig);
  const plain = plainSetup(options, rig, experience, {
    target: prepared.target,
    live: prepared.live,
    units: context.units,
    display,
    buttons: pressableButtons(rigSource),
    ownFullScaleN,
    forceRemark: forceRemark(ownFullScaleN, prepared.targets, context.units),
    // a simulated driver has no foot that could hurt
    isFirstRun: rigSource.kind !== 'virtual' && experience.hoursSinceLastRep === null,
  });
  // Only a plan asks for the zone of time, which takes a while to find out.
  const setup = prepared.planned?.(plain, { store, driver, now: zonedNow() }) ?? plain;
  return { source, decoder, setup, log, store, driver };
}

function practiceStart(
  options: DrillOptions,
  rig: Rig,
  source: SourceKind,
  driver: string,
): Omit<PracticeStart, 'startedAt'> {
  return {
    driver,
    source,
    foot: options.foot ?? rig.foot,
    footwear: options.footwear ?? rig.footwear,
    calibrationId: calibrationId(rig),
    sensor: brakeOf(rig)?.calibration.sensor ?? 'unknown',
    seed: options.seed,
  };
}

async function recorded(
  { record }: DrillOptions,
  { source, rig }: RigSource,
): Promise<ReportSource> {
  if (record === null) return source;
  const { recordReports } = await import('../input/recording/record-reports.ts');
  return recordReports(source, record, rig);
}

/** What a plain drill's setup takes from elsewhere than the options and the rig. */
type Circumstances = Pick<
  DrillSetup,
  | 'target'
  | 'live'
  | 'units'
  | 'display'
  | 'buttons'
  | 'ownFullScaleN'
  | 'forceRemark'
  | 'isFirstRun'
>;

function plainSetup(
  options: DrillOptions,
  rig: Rig,
  experience: Experience,
  circumstances: Circumstances,
): DrillSetup {
  return {
    ...circumstances,
    ...experience,
    plan: null,
    reps: options.reps ?? BLOCK_REPS,
    seed: seedOf(options),
    feedback: null,
    asksRating: options.selfRating,
    ratingWaitS: null,
    axes: axesOf(rig),
    brakeStepLevel: brakeStepLevel(rig),
    timing: REP_TIMING,
  };
}

/** A practice without a seed asked for differs from the last one. */
export function seedOf({ seed }: DrillOptions): number {
  return seed ?? Date.now() % 2 ** 31;
}

function ownFullScale(rig: Rig): number | null {
  const brake = brakeOf(rig);
  return brake === undefined ? null : fullScaleNewtons(brake.calibration);
}

function brakeOf({ axes }: Rig): Rig['axes'][number] | undefined {
  return axes.find(({ role }) => role === 'brake');
}
