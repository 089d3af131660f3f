import type { DrillPhase, DrillView } from '../../drill/drill-view.ts';
import { gaussian, type RandomSource, seededRandom } from '../../drill/seeded-random.ts';
import { pacedStretch } from '../../target/paced-stretch.ts';
import type { Target } from '../../target/target.ts';
import { type BrakingIdea, guessedIdea, ideaOfTarget } from './braking-idea.ts';
import { planBraking } from './braking-plan.ts';
import { AT_REST, type Controls, letGo, moveControls, type Wish } from './controls.ts';
import { type ErrorDraw, errorDraw } from './draw-errors.ts';
import { type DriverPreset, warmUpFactor } from './driver-preset.ts';
import { forceNoise } from './force-noise.ts';
import { lateWheel } from './late-wheel.ts';
import { LiveDriver } from './live-driver.ts';
import { type RepMotion, wishAt } from './rep-motion.ts';

/** Standard deviation of what is timed on a countdown or within the rep. */
const TIMING_NOISE_S = 0.03;
/** How late the wheel goes in where it sets the pace of the release; invented. */
const LATE_WHEEL_S = 0.15;
const LATE_WHEEL_NOISE_S = 0.08;
/** The driver lives in steps of the fastest device's period. */
export const DRIVER_STEP_S = 0.001;

/** Nothing to brake for: the foot comes off. */
const IDLE: ReadonlySet<DrillPhase> = new Set<DrillPhase>([
  'arming',
  'rest',
  'paused',
  'device-lost',
  'summary',
]);

/** What a driver brings along from practices before this one. */
export interface Practised {
  readonly reps: number;
  readonly targets: readonly Target[];
}

/**
 * A driver made of a few habits and noise, who knows nothing but what the screen shows: counts down with it, presses
 * at the cue, follows the target seen or remembered, and gets better with every rep.
 */
export class SimulatedDriver {
  readonly #draw: ErrorDraw;
  readonly #timing: RandomSource;
  readonly #noise: () => number;
  readonly #controls: Controls = { ...AT_REST };
  /** Targets seen so far, by name. */
  readonly #remembered: Map<string, Target> = new Map();
  readonly #live: LiveDriver;
  readonly #practised: Practised | null;
  #reps = 0;
  #motion: RepMotion | null = null;

  /** @param practised null for a driver who has never driven here, and whose first rep is as good as the preset */
  constructor(preset: DriverPreset, seed: number, practised: Practised | null = null) {
    this.#practised = practised;
    for (const target of practised?.targets ?? []) this.#remembered.set(target.name, target);
    this.#draw = errorDraw(preset, seed);
    this.#timing = seededRandom(seed, 7);
    this.#live = new LiveDriver(this.#draw, this.#timing, practised?.reps ?? 0);
    this.#noise = forceNoise(seededRandom(seed, 8), DRIVER_STEP_S);
  }

  /** Looks at the screen. */
  see(view: DrillView): void {
    if (view.live !== null) this.#live.see(view, view.live);
    else this.#seeTarget(view);
  }

  #seeTarget(view: DrillView): void {
    if (view.target !== null) this.#remembered.set(view.targetName, view.target);
    if (view.toCueS !== null && this.#motion === null) {
      this.#motion = this.#prepare(view, view.atS + view.toCueS);
      this.#reps += 1;
    }
    if (IDLE.has(view.phase)) this.#motion = null;
  }

  /** Feet and hands at the next step. The object is reused. */
  stepTo(timeS: number): Readonly<Controls> {
    const noise = this.#noise();
    const wish = this.#live.wishAt(timeS, noise) ?? this.#shapeWish(timeS, noise);
    if (wish === null) letGo(this.#controls, DRIVER_STEP_S);
    else moveControls(this.#controls, wish, DRIVER_STEP_S);
    return this.#controls;
  }

  #shapeWish(timeS: number, noise: number): Wish | null {
    return this.#motion === null ? null : wishAt(this.#motion, timeS, noise);
  }

  #prepare(view: DrillView, cueS: number): RepMotion {
    const idea = this.#ideaOf(view);
    const about = (timeS: number) => timeS + TIMING_NOISE_S * gaussian(this.#timing);
    const pressS = about(cueS);
    const loss = this.#practised === null ? 1 : warmUpFactor(this.#reps);
    const reps = this.#reps + (this.#practised?.reps ?? 0);
    const errors = this.#draw(idea, reps, view.feedback, loss);
    return {
      pressS,
      idea,
      plan: planBraking(idea, errors),
      shiftsS: idea.gears.map(({ at }) => about(pressS + at)),
    };
  }

  #ideaOf({ target, targetName, cornerType, paced }: DrillView): BrakingIdea {
    const known = target ?? this.#remembered.get(targetName);
    if (known === undefined) return guessedIdea(cornerType);
    const stretch = paced ? pacedStretch(known) : null;
    if (stretch === null) return ideaOfTarget(known);
    const lateS = Math.max(0, LATE_WHEEL_S + LATE_WHEEL_NOISE_S * gaussian(this.#timing));
    return lateWheel(ideaOfTarget(known), stretch.fromS, lateS);
  }
}
