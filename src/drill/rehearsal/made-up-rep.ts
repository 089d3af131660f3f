import type { Target } from '../../target/target.ts';
import { columnOf } from '../../trace/column-of.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { Track } from '../../trace/track.ts';
import type { DrillSetup } from '../drill-setup.ts';

const RATE_HZ = 1000;
/** Late and light enough for a cause to be looked for. */
const LATE_S = 0.04;
const LIGHT_SHARE = 0.85;

/** From when to when it is recorded, s: the target begins to rise at 0. */
interface Span {
  readonly fromS: number;
  readonly toS: number;
}

/** A rep that nobody drove: the target, a little late and too light, on all the axes that the rig has. */
export function madeUpRep(
  target: Target,
  { fromS, toS }: Span,
  { axes, brakeStepLevel }: Pick<DrillSetup, 'axes' | 'brakeStepLevel'>,
): RepRecord {
  const count = Math.floor((toS - fromS) * RATE_HZ);
  const track = (at: (timeS: number) => number): Track => {
    const timeS = columnOf(count, (i) => fromS + i / RATE_HZ);
    return { timeS, value: columnOf(count, (i) => at(timeS[i]!)) };
  };
  const atRest = (isThere: boolean): Track | null => (isThere ? track(() => 0) : null);
  return {
    brake: track((timeS) => (timeS < LATE_S ? 0 : LIGHT_SHARE * target.level.at(timeS - LATE_S))),
    throttle: atRest(axes.throttle),
    clutch: atRest(axes.clutch),
    steering: atRest(axes.steering),
    buttons: [],
    gaps: [],
    brakeStepLevel,
    endS: toS,
  };
}
