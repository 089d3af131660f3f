import { Subject } from 'rxjs';
import { zonedInstant } from '../consistency/zoned-instant.ts';
import { PLAIN_DISPLAY } from '../drill/display/display-settings.ts';
import type { KeyAction } from '../drill/drill-message.ts';
import { type DrillSetup, REP_TIMING } from '../drill/drill-setup.ts';
import type { DrillView } from '../drill/drill-view.ts';
import { type RandomSource, seededRandom } from '../drill/seeded-random.ts';
import type { HistoryStore, PracticeStart } from '../history/store.ts';
import { brakeStepLevel } from '../input/rig/brake-step-level.ts';
import { calibrationId } from '../input/rig/calibration-id.ts';
import type { Rig } from '../input/rig/rig.ts';
import { createRigDecoder } from '../input/rig/rig-decoder.ts';
import type { DriverName } from '../input/virtual/driver-preset.ts';
import { feltRating } from '../input/virtual/felt-rating.ts';
import type { InventedPractice } from '../input/virtual/invented-practices.ts';
import { openVirtualSource } from '../input/virtual/open-virtual-source.ts';
import type { Practised } from '../input/virtual/simulated-driver.ts';
import { virtualRig } from '../input/virtual/virtual-rig.ts';
import { runDrill } from './drill-loop.ts';
import { type Experience, experienceOf } from './experience.ts';
import type { InventedSubject } from './invented-programme.ts';
import { plannedSetup } from './planned-setup.ts';
import { PracticeLog } from './practice-log.ts';

/** Share of reps that the driver gives up; invented. */
const ABORTED_SHARE = 0.03;
/** Nobody waits between simulated reps; their time stamps say that somebody did. */
const BRISK: DrillSetup['timing'] = { countdownS: 1, holdS: 0.1, showS: 0, restS: 0.1 };
const SKIPPED_S: number = waitedS(REP_TIMING) - waitedS(BRISK);

interface InventedDriver {
  readonly preset: DriverName;
  readonly practised: Practised;
}

/**
 * Drives one practice of an invented history through the drill itself: devices, decoder, stages, score and store.
 *
 * @param onRep called after each rep that is written down
 * @returns how many reps were written down
 */
export async function inventPractice(
  store: HistoryStore,
  { startedAt, pedals, seed }: InventedPractice,
  { preset, practised }: InventedDriver,
  subject: InventedSubject,
  onRep: () => void,
): Promise<number> {
  const source = openVirtualSource({ preset, seed, pace: 'simulated', bits: pedals, practised });
  const rig = virtualRig(pedals);
  const keys$ = new Subject<KeyAction>();
  const [giveUp, feel] = [givingUp(seededRandom(seed, 22), keys$), seededRandom(seed, 23)];
  const run = { reps: 0, blocks: 0, atS: 0, over: false };
  const now = () =>
    zonedInstant(
      startedAt.utcMs + Math.round(1000 * (run.atS + run.reps * SKIPPED_S)),
      startedAt.zone,
    );
  const log = new PracticeLog(store, practiceStart(source.label, rig, seed), null, now);
  const experience = experienceOf(store, source.label, subject.target, startedAt.utcMs);
  const plain = plainSetup(subject, rig, seed, experience);
  const circumstances = { store, driver: source.label, now: startedAt };
  const setup = subject.plan === null ? plain : plannedSetup(plain, subject.plan, circumstances);
  await runDrill(source, createRigDecoder(rig, source.devices), setup, {
    keys$,
    unattended: subject.plan !== null,
    store: (rep) => {
      const rating = rep.feedback === 'shown' ? null : feltRating(rep.outcome, feel);
      log.add({ ...rep, rating });
      run.reps++;
      onRep();
    },
    onView: (view) => {
      run.atS = view.atS;
      giveUp(view);
      if (view.phase !== 'summary' || run.over || subject.plan !== null) return;
      // the reps at the start of a day are a block of their own
      if (view.reps === setup.reps) run.blocks++;
      run.over = run.blocks === subject.blocks;
      keys$.next(run.over ? 'finish' : 'next');
    },
  });
  await source.close();
  return run.reps;
}

function practiceStart(driver: string, rig: Rig, seed: number): Omit<PracticeStart, 'startedAt'> {
  return {
    driver,
    source: 'virtual',
    foot: rig.foot,
    footwear: rig.footwear,
    calibrationId: calibrationId(rig),
    sensor: 'force',
    seed,
  };
}

function plainSetup(
  { target, live, reps }: InventedSubject,
  rig: Rig,
  seed: number,
  experience: Experience,
): DrillSetup {
  return {
    target,
    live,
    plan: null,
    units: 'metric',
    reps,
    seed,
    ...experience,
    feedback: null,
    asksRating: false,
    ratingWaitS: null,
    axes: { throttle: true, clutch: true, steering: true },
    buttons: [],
    display: PLAIN_DISPLAY,
    brakeStepLevel: brakeStepLevel(rig),
    forceRemark: null,
    ownFullScaleN: null,
    isFirstRun: false,
    timing: BRISK,
  };
}

function waitedS({ countdownS, holdS, showS, restS }: DrillSetup['timing']): number {
  return countdownS + holdS + showS + restS;
}

/** Now and then a rep is broken off in the middle. */
function givingUp(random: RandomSource, keys$: Subject<KeyAction>): (view: DrillView) => void {
  let decided: boolean | null = null;
  return ({ phase, nowS }) => {
    if (phase === 'countdown') decided ??= random() < ABORTED_SHARE;
    else if (phase !== 'braking' && phase !== 'cue') decided = null;
    if (phase !== 'braking' || nowS < 0.5 || decided !== true) return;
    decided = false;
    keys$.next('repeat');
  };
}
