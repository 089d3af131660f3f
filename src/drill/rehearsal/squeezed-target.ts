import type { Curve, Target } from '../../target/target.ts';

/**
 * A target over time in a share of its time, to score something short by. Its name and version are those of the whole.
 *
 * @param share above 0; 1 gives the target itself
 */
export function squeezedTarget(target: Target, share: number): Target {
  if (share === 1) return target;
  const { rise, peak, startOfRelease, turnIn, apex, finalRelease, brakeOff } = target.marks;
  return {
    ...target,
    level: squeezed(target.level, share),
    steering: target.steering && squeezed(target.steering, share),
    corridorAt: (timeS) => target.corridorAt(timeS / share),
    marks: {
      rise: rise * share,
      peak: peak * share,
      startOfRelease: startOfRelease * share,
      turnIn: turnIn && turnIn * share,
      apex: apex && apex * share,
      finalRelease: finalRelease * share,
      brakeOff: brakeOff * share,
    },
  };
}

function squeezed({ start, end, at }: Curve, share: number): Curve {
  return { start: start * share, end: end * share, at: (timeS) => at(timeS / share) };
}
