import { NARROWEST_BANDS } from '../advice-bands.ts';
import { causeFault, momentFault } from '../describe-cause.ts';
import { type BlockCause, dominantCause } from '../dominant-cause.ts';
import { fault, first } from '../fault.ts';
import { sharedKeyPointFault } from '../key-point-fault.ts';
import { quantile } from '../quantile.ts';
import type { RepScore } from '../rep-score.ts';
import { sharedGroup } from '../shared-group.ts';
import { isStep, stepFault } from '../smooth-fault.ts';
import { type FoundTrouble, pointsLostTo } from './found-trouble.ts';
import { changeFor, momentChange } from './release-change.ts';

/** What is told of some releases, and which they were. */
type Told = Pick<FoundTrouble, 'fault' | 'change'> & { readonly shared: readonly RepScore[] };

/** What three releases or more had wrong the same way: as a whole, or at the moment that they missed alike. */
export function releaseTrouble(scored: readonly RepScore[]): FoundTrouble | null {
  const cause = dominantCause(scored);
  const told = noRelease(scored, cause?.reps ?? 0) ?? named(scored, cause);
  return (
    told && {
      part: 'release',
      fault: told.fault,
      change: told.change,
      lost: pointsLostTo('release', told.shared),
      reps: told.shared.length,
      of: scored.length,
    }
  );
}

/** Brakes never let go, or let go in a step, where as many reps as share a cause have it: a cause would name what is not there. */
function noRelease(scored: readonly RepScore[], others: number): Told | null {
  const kindOf = ({ flags, rateRatio }: RepScore): 'held' | 'step' | null => {
    if (flags.includes('not-released')) return 'held';
    return rateRatio !== null && isStep(rateRatio) ? 'step' : null;
  };
  const shared = sharedGroup(
    scored.filter((rep) => kindOf(rep) !== null),
    (rep) => kindOf(rep)!,
  );
  if (shared === null || shared.length < others) return null;
  return kindOf(shared[0]) === 'held'
    ? {
        fault: first(fault('the brake was never fully released')),
        change: 'come all the way off the brake',
        shared,
      }
    : {
        fault: stepFault(
          quantile(
            shared.map(({ rateRatio }) => rateRatio!),
            0.5,
          )!,
        ),
        change: 'let the pressure go evenly, without a step',
        shared,
      };
}

/** By the cause, or by the moment where there is none or it is a shape: that says nothing a foot can do. */
function named(scored: readonly RepScore[], found: BlockCause | null): Told | null {
  if (found === null) return moment(scored);
  const shared = scored.filter(({ cause }) => cause !== null && found.causes.includes(cause));
  const fault = causeFault(found.cause, NARROWEST_BANDS);
  if (fault === null) return null;
  const whole = { fault, change: changeFor(found.cause, scored), shared };
  return found.cause.kind === 'shape' ? (moment(shared) ?? whole) : whole;
}

function moment(reps: readonly RepScore[]): Told | null {
  const found = sharedKeyPointFault(reps, NARROWEST_BANDS.timingS);
  return (
    found && {
      fault: momentFault(found.fault),
      change: momentChange(found.fault),
      shared: found.reps,
    }
  );
}
