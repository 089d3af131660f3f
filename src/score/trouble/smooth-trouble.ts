import type { TextUnits } from '../../unit-text.ts';
import { lockUpWords, placeWords, worstOfGrip } from '../describe-live.ts';
import { type Fault, fault, first } from '../fault.ts';
import { quantile } from '../quantile.ts';
import type { RepScore } from '../rep-score.ts';
import { RATE_RATIO_LIMITS } from '../score-version.ts';
import { sharedGroup } from '../shared-group.ts';
import { stepFault, wentBack } from '../smooth-fault.ts';
import { type FoundTrouble, pointsLostTo } from './found-trouble.ts';

type Roughness = 'front' | 'rear' | 'anti-lock' | 'back' | 'step';

/** What kept three releases or more from being smooth: wheels beyond their grip, going back up, or a step. */
export function smoothTrouble(scored: readonly RepScore[], units: TextUnits): FoundTrouble | null {
  const rough = scored.flatMap((rep) => {
    const kind = roughness(rep);
    return kind === null ? [] : { rep, kind };
  });
  const shared = sharedGroup(rough, ({ kind }) => kind);
  if (shared === null) return null;
  const reps = shared.map(({ rep }) => rep);
  return {
    part: 'smooth',
    ...toldOf(shared[0].kind, reps, units),
    lost: pointsLostTo('smooth', reps),
    reps: reps.length,
    of: scored.length,
  };
}

/** In the order in which `smoothFault` looks for it in one rep. */
function roughness(rep: RepScore): Roughness | null {
  const grip = rep.live == null ? null : worstOfGrip(rep.live, rep.parts.smooth);
  if (grip !== null) return grip === 'anti-lock' ? grip : grip.axle;
  if (wentBack(rep)) return 'back';
  return (rep.rateRatio ?? 0) > RATE_RATIO_LIMITS.full ? 'step' : null;
}

function toldOf(
  kind: Roughness,
  reps: readonly RepScore[],
  units: TextUnits,
): Pick<FoundTrouble, 'fault' | 'change'> {
  switch (kind) {
    case 'anti-lock':
      return {
        fault: first(fault('anti-lock still at work after turn-in')),
        change: 'be out of the anti-lock before turn-in',
      };
    case 'back':
      return {
        fault: fault('back on the brake during the release'),
        change: 'only ease once you release: do not go back on the brake',
      };
    case 'step':
      return {
        fault: stepFault(middle(reps.flatMap(({ rateRatio }) => rateRatio ?? []))),
        change: 'let the pressure go evenly, without a step',
      };
    default:
      return lockUps(kind, reps, units);
  }
}

function lockUps(
  axle: 'front' | 'rear',
  reps: readonly RepScore[],
  units: TextUnits,
): { readonly fault: Fault; readonly change: string } {
  const fromM = middle(reps.flatMap(({ live }) => live?.lockUps[0]?.fromM ?? []));
  return {
    fault: first(fault(lockUpWords({ axle, fromM }, units))),
    change: `less pressure ${placeWords(fromM, units)}, where the ${axle} wheels lock`,
  };
}

const middle = (values: readonly number[]): number => quantile(values, 0.5)!;
