import { describe, expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
import { type HeatState, withHeat } from '../../src/car/heat-state.ts';
import { liveZone } from '../../src/live/build-live-zone.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import { heatAfterRep } from '../../src/live/heat-after-rep.ts';
import type { LiveZone } from '../../src/live/live-zone.ts';
import { deriveTarget } from '../../src/target/derive/derive-target.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR, SMOOTH_CORNER } from '../reference/gt-car.ts';
import { pointsOver, recordOf, zoneOf } from './rigs.ts';

const GAP_S = 45;
const SPEED_MPS = 40;
const AIR_C = 25;
/** h A / (m c): 4 + 0.73 v / r over 9 kg of 480 J/(kg K) with 0.12 m^2. */
const TAU_S = (9 * 480) / ((4 + (0.73 * SPEED_MPS) / 0.33) * 0.12);

const atAir = { front: AIR_C, rear: AIR_C };
/** Pads that do not care, so that every stop is the same. */
const COLD: Car = { ...GT_CAR, airC: AIR_C, discStartC: atAir, padStartC: atAir };

function driveTarget(zone: LiveZone) {
  const { points, durationS } = zone.derived.zone;
  return driveRecord(
    zone,
    recordOf({ brake: pointsOver(points, (p) => p.level), endS: durationS }),
  );
}

/** The same zone with brakes at other temperatures, its target derived anew. */
function zoneAtHeat({ car, corner, target, controls }: LiveZone, heat: HeatState): LiveZone {
  const derived = deriveTarget(withHeat(car, heat), corner);
  return liveZone({ derived, advice: target.advice, controls, call: null });
}

describe('a stint of ten stops', () => {
  // After n equal stops: T = T_air + dT (1 - e^(-n x)) / (1 - e^-x), x = gap / tau; cooled once more e^-x of it is left.
  test('heats the discs by the closed form of repeated stops', () => {
    let zone = zoneOf(COLD, SMOOTH_CORNER);
    const run = driveTarget(zone);
    const riseK = (0.95 * (run.end.workJ.front / 2)) / (9 * 480);
    expect(riseK).toBeGreaterThan(80);
    const x = GAP_S / TAU_S;
    for (let n = 1; n <= 10; n++) {
      const heat = heatAfterRep(zone, driveTarget(zone), GAP_S, SPEED_MPS);
      const peakC = AIR_C + (riseK * (1 - Math.exp(-n * x))) / (1 - Math.exp(-x));
      expectRelative(heat.discC.front, AIR_C + (peakC - AIR_C) * Math.exp(-x), 1e-6);
      expect(heat.padC).toEqual(heat.discC);
      zone = zoneAtHeat(zone, heat);
    }
  });

  test('cools in between at the mean of the approach and the slowest speed, by hand', () => {
    const zone = zoneOf(COLD, SMOOTH_CORNER);
    const run = driveTarget(zone);
    const hotC = AIR_C + (0.95 * (run.end.workJ.front / 2)) / (9 * 480);
    const meanMps = (zone.corner.approachSpeedMps + zone.derived.keys.slowest.speedMps) / 2;
    const tauS = (9 * 480) / ((4 + (0.73 * meanMps) / 0.33) * 0.12);
    const { discC } = heatAfterRep(zone, run, GAP_S);
    expectRelative(discC.front - AIR_C, (hotC - AIR_C) * Math.exp(-GAP_S / tauS), 1e-9);
  });

  // Friction falls from 0.8 at 450 C to 0.55 at 650 C, both axles alike: 0.8 / 0.55 = 1.454545 of the force.
  test('asks for more pedal force as the pads fade, by the ratio of the frictions', () => {
    const pads = [
      { discC: 450, friction: 0.8 },
      { discC: 650, friction: 0.55 },
    ];
    const fading = { ...GT_CAR, padCurves: { front: pads, rear: pads } };
    const at = (temperatureC: number) => {
      const both = { front: temperatureC, rear: temperatureC };
      return withHeat(fading, { discC: both, padC: both });
    };
    const zone = zoneOf(at(450), SMOOTH_CORNER);
    const both = { front: 650, rear: 650 };
    const faded = zoneAtHeat(zone, { discC: both, padC: both });
    const forceN = ({ derived }: LiveZone) => derived.keys.peak.pedalForceN;
    expectRelative(forceN(faded) / forceN(zone), 1.454545, 1e-6);
    // And the car does with it what it did before, but for the brake that takes hold at a fixed share of full scale.
    const [cold, hot] = [driveTarget(zone), driveTarget(faded)];
    expectRelative(hot.end.speedMps, cold.end.speedMps, 1e-3);
    // While the old force is not enough any more.
    const old = pointsOver(zone.derived.zone.points, (p) => p.level);
    const weak = driveRecord(faded, recordOf({ brake: old, endS: zone.derived.zone.durationS }));
    expect(weak.end.speedMps).toBeGreaterThan(hot.end.speedMps + 3);
  });

  test('keeps identity and version, so that its reps compare', () => {
    const zone = zoneOf(COLD, SMOOTH_CORNER);
    const later = zoneAtHeat(zone, heatAfterRep(zone, driveTarget(zone), GAP_S));
    expect(later.target.id).toBe('gt-example/smooth/qualifying');
    expect(later.target.version).toBe(zone.target.version);
    expect(later.car.discStartC.front).toBeGreaterThan(AIR_C + 20);
  });
});

describe('another version', () => {
  const version = (car: Car, corner = SMOOTH_CORNER) => zoneOf(car, corner).target.version;
  test.each([
    ['the mass', { ...GT_CAR, chassis: { ...GT_CAR.chassis, massKg: 1260 } }, SMOOTH_CORNER],
    [
      'the balance bar',
      { ...GT_CAR, brakes: { ...GT_CAR.brakes, balanceBarFront: 0.57 } },
      SMOOTH_CORNER,
    ],
    ['the slope', GT_CAR, { ...SMOOTH_CORNER, slopeAt: () => 0.01 }],
    ['the share of grip', GT_CAR, { ...SMOOTH_CORNER, gripShare: 0.95 }],
  ])('comes with %s', (_, car, corner) => {
    expect(version(car, corner)).not.toBe(version(GT_CAR));
  });

  test('comes with a late call', () => {
    const zone = zoneOf(GT_CAR, SMOOTH_CORNER);
    const before = deriveTarget(GT_CAR, { ...SMOOTH_CORNER, variant: 'race' });
    const called = liveZone({ ...zone, advice: null, call: { word: 'damp', before } });
    expect(called.target.version).not.toBe(zone.target.version);
  });
});
