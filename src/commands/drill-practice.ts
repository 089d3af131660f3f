import { type DisplaySettings, PLAIN_DISPLAY } from '../drill/display/display-settings.ts';
import { BLOCK_REPS, type DrillSetup, REP_TIMING } from '../drill/drill-setup.ts';
import { openHistory } from '../history/open-history.ts';
import type { HistoryStore } from '../history/store.ts';
import type { ReportSource } from '../input/report-source.ts';
import { brakeStepLevel } from '../input/rig/brake-step-level.ts';
import { calibrationId } from '../input/rig/calibration-id.ts';
import type { Rig } from '../input/rig/rig.ts';
import { createRigDecoder, type RigDecoder } from '../input/rig/rig-decoder.ts';
import { type AskedForce, rigInNewtons } from '../input/rig/rig-in-newtons.ts';
import type { Target } from '../target/target.ts';
import type { CommandContext } from './command.ts';
import type { DrillOptions } from './drill-options.ts';
import type { DrillSubject } from './drill-subject.ts';
import { type Experience, experienceOf } from './experience.ts';
import { forceRemark } from './force-remark.ts';
import { builtLaps, lapSetup } from './lap-setup.ts';
import { pressableButtons } from './list-buttons.ts';
import { LOCAL_DRIVER } from './local-driver.ts';
import {
  type BuiltZone,
  builtPlan,
  type PlanCircumstances,
  plannedSetup,
} from './planned-setup.ts';
import { PracticeLog } from './practice-log.ts';
import type { RigSource } from './rig-source.ts';
import { axesOf, whatIsDrilled } from './what-is-drilled.ts';
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
  const { kind } = rigSource;
  // A corner that cannot be driven is better said before anything is opened.
  const { target, live, planned, targets } = prepare(subject, options, rigSource.rig);
  const { rig, counts } = rigInNewtons(rigSource.rig, targets.map(askedForce));
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
  const experience = experienceOf(store, driver, target, Date.now());
  const plain = drillSetup(
    options,
    rig,
    {
      target,
      live,
      units: context.units,
      display,
      buttons: pressableButtons(rigSource),
      forceRemark: forceRemark(counts, context.units),
      // a simulated driver has no foot that could hurt
      isFirstRun: kind !== 'virtual' && experience.hoursSinceLastRep === null,
    },
    experience,
  );
  // Only a plan asks for the zone of time, which takes a while to find out.
  const setup = planned === null ? plain : planned(plain, { store, driver, now: zonedNow() });
  return { source, decoder, setup, log, store, driver };
}

function askedForce({ fullScale, peakLevel }: Target): AskedForce {
  return { fullScaleN: fullScale.pedalForceN, peakLevel };
}

/** What a practice is made of before the history is asked. */
interface Prepared extends Pick<DrillSetup, 'target' | 'live'> {
  /** The plan it follows; null without one. */
  readonly planned: Planned | null;
  /** All that may be drilled in it. */
  readonly targets: readonly Target[];
}

function prepare(subject: DrillSubject, options: DrillOptions, rig: Rig): Prepared {
  if (subject.kind === 'event') {
    const laps = builtLaps(subject, rig);
    return {
      ...begunWith(laps.zones[0]!),
      planned: (plain, now) => lapSetup(plain, laps, now),
      targets: [...laps.zones, ...laps.outLap].map(({ target }) => target),
    };
  }
  if (subject.kind === 'plan') {
    const plan = builtPlan(subject, rig);
    const promoted = plan.zones.flatMap((zone) => zone.promoted ?? []);
    return {
      ...begunWith(plan.zones[0]!),
      planned: (plain, now) => plannedSetup(plain, plan, now),
      targets: [...plan.zones, ...promoted, ...plan.carryOver].map(({ target }) => target),
    };
  }
  const drilled = whatIsDrilled(subject, options.live, rig);
  return { ...drilled, planned: null, targets: [drilled.target] };
}

/** A plain drill's setup as a plan or an event has it, as far as the history lets the driver go. */
type Planned = (plain: DrillSetup, circumstances: PlanCircumstances) => DrillSetup;

function begunWith({ target, live }: BuiltZone): Pick<DrillSetup, 'target' | 'live'> {
  return { target, live: live?.plan ?? null };
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
  subject: Pick<
    DrillSetup,
    'target' | 'live' | 'units' | 'display' | 'buttons' | 'forceRemark' | 'isFirstRun'
  >,
  experience: Experience,
): DrillSetup {
  return {
    ...subject,
    plan: null,
    reps: options.reps ?? BLOCK_REPS,
    seed: seedOf(options),
    ...experience,
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

function brakeOf({ axes }: Rig): Rig['axes'][number] | undefined {
  return axes.find(({ role }) => role === 'brake');
}
