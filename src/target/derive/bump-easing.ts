import { frontForceN } from '../../car/brake-split.ts';
import { wheelbaseM } from '../../car/chassis.ts';
import { axleFrictionFactor } from '../../car/tyre.ts';
import { bumpSlowdownRadps } from '../../car/wheel-bump.ts';
import type { CornerBump } from '../../corner/corner.ts';
import { brakeSplitIn } from '../../corner/two-axle.ts';
import { wheelForces } from '../../corner/wheel-forces.ts';
import type { ZoneSetting } from './zone-model.ts';

/** The car as it comes to a bump. */
interface AtBump {
  readonly speedMps: number;
  /** Friction brakes of both axles at the road, N. */
  readonly brakeForceN: number;
  readonly engineN: number;
}

/**
 * How much slower than they roll the wheels may turn after a bump: where a tyre grips best, at 0.05 to 0.15. Up to there
 * they come back with the grip that the easing leaves.
 */
const MOST_SLIP = 0.05;

/**
 * Share of the brake force to give up so that a bump locks no wheel, in hundredths; 0 where none has to be, and
 * where none would do because the corner alone takes the grip.
 *
 * @source the wheel that loses its load for half a sine, see `bumpSlowdownRadps`; beside a lateral force the ellipse's
 *   share along is taken to dip as half a sine
 */
export function easeShare(setting: ZoneSetting, bump: CornerBump, at: AtBump): number {
  for (let ease = 0; ease < 100; ease++) {
    const brakeForceN = at.brakeForceN * (1 - ease / 100);
    const slips = (['front', 'rear'] as const).map((side) =>
      slipAfter(setting, bump, { ...at, brakeForceN }, side),
    );
    if (Math.max(...slips) <= MOST_SLIP) return ease / 100;
  }
  return 0;
}

/** How much slower than they roll an axle's wheels turn after a bump, as a share. */
function slipAfter(
  { car, axles, road }: ZoneSetting,
  { atM, lengthM, depth }: CornerBump,
  at: AtBump,
  side: 'front' | 'rear',
): number {
  const { speedMps, brakeForceN, engineN } = at;
  const isFront = side === 'front';
  const forces = wheelForces(axles, road, atM, speedMps ** 2);
  const transferN = ((brakeForceN + engineN) * car.chassis.cgHeightM) / wheelbaseM(car.chassis);
  const loadN = isFront ? forces.frontLoadN + transferN : forces.rearLoadN - transferN;
  const acrossN = isFront ? forces.frontAcrossN : forces.rearAcrossN;
  const frontN = frontForceN(brakeSplitIn(axles), brakeForceN);
  const driveShare = isFront ? car.frontDriveShare : 1 - car.frontDriveShare;
  const alongN = (isFront ? frontN : brakeForceN - frontN) + driveShare * engineN;
  const tyre = car.tyres[side];
  const factor = axleFrictionFactor(tyre, loadN, (acrossN * car.chassis.cgHeightM) / car.trackM);
  // Shares of the grip with the whole load: what the corner takes, and what is left along before and in the bump.
  const across = acrossN / (tyre.lateralFriction * factor * loadN);
  const left = alongShare(1, across);
  if (left === 0) return Number.POSITIVE_INFINITY;
  const mu = tyre.longitudinalFriction * factor * left;
  const { inertiaKgm2 } = car.wheels[side];
  const radiusM = car.brakes[side].wheelRadiusM;
  const slowdownRadps = bumpSlowdownRadps(
    {
      loadN: loadN / 2,
      depth: 1 - alongShare(1 - depth, across) / left,
      durationS: lengthM / speedMps,
    },
    { radiusM, inertiaKgm2, mu },
    alongN / (mu * loadN),
  );
  return (slowdownRadps * radiusM) / speedMps;
}

/** What an ellipse leaves along, as a share, of a load beside a lateral share. */
function alongShare(load: number, across: number): number {
  return Math.sqrt(Math.max(0, load ** 2 - across ** 2));
}
