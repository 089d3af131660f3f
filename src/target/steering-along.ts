import { monotoneCubic } from '../curve/monotone-cubic.ts';
import { riseShare } from './rise-shape.ts';
import { tabulate } from './tabulate.ts';
import type { Curve } from './target.ts';
import type { TargetSpec } from './target-spec.ts';

/** No wheel shows a smaller angle. */
export const STEERING_TOLERANCE_DEG = 0.01;

/** Degrees at the wheel over the target's own axis; null where the target leaves steering to the driver. */
export function steeringCurve(spec: TargetSpec): Curve | null {
  const { steering, turnIn, apex } = spec;
  if (steering === null) return null;
  if (steering.kind === 'knots') {
    const { knots } = steering;
    const first = knots[0]!.x;
    const last = knots[knots.length - 1]!.x;
    return tabulate(monotoneCubic(knots), first, last, STEERING_TOLERANCE_DEG);
  }
  if (turnIn === null || apex === null) return null;
  const share = riseShare(steering.shape);
  return tabulate(
    (x) => steering.angleDeg * share((x - turnIn) / (apex - turnIn)),
    Math.min(turnIn, apex),
    Math.max(turnIn, apex),
    STEERING_TOLERANCE_DEG,
  );
}
