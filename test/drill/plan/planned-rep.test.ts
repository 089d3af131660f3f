import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { CarFile } from '../../../src/car/car-file.ts';
import { readCornerSheet } from '../../../src/corner/read-corner-sheet.ts';
import type { DrillModel } from '../../../src/drill/drill-model.ts';
import { firstLiveRep } from '../../../src/drill/live/live-rep.ts';
import type { PracticeZone } from '../../../src/drill/plan/planned-practice.ts';
import { setUpPlannedRep } from '../../../src/drill/plan/planned-rep.ts';
import { startDrill } from '../../../src/drill/start-drill.ts';
import { readCar } from '../../profile/read-sound.ts';
import { RAMP, setup } from '../drill-rig.ts';

const text = (path: string): string =>
  readFileSync(new URL(`../../../profiles/${path}`, import.meta.url), 'utf8');
/** Read anew for each zone, as a plan names it. */
const car = (id: string): CarFile => readCar(text(`cars/${id}.yaml`), `${id}.yaml`);

const OVER_TIME: PracticeZone = {
  target: RAMP,
  live: null,
  repsInLife: 0,
  recent: [],
  reference: null,
  paced: false,
};

function liveZone(corner: string, carId: string): PracticeZone {
  const plan = {
    car: car(carId),
    sheet: readCornerSheet(text(`corners/${corner}.yaml`), `${corner}.yaml`),
    variant: 'race',
    controls: { steering: true, throttle: true, clutch: true, paddles: true },
    stintS: 45,
    callShare: 0,
    notes: [],
  };
  const first = firstLiveRep(plan);
  return { ...OVER_TIME, target: first.zone.target, live: { plan, first } };
}

const HOT = { discC: { front: 500, rear: 400 }, padC: { front: 500, rear: 400 } };

/** The drill before the second rep of a plan, its brakes hot from the first. */
function beforeSecond(...zones: readonly PracticeZone[]): DrillModel {
  const reps = zones.map((zone) => ({ zone, variation: null }));
  const plan = {
    name: 'Stint',
    remarks: [],
    blocks: [{ phase: 'block', order: 'serial', reps } as const],
    feedback: { kind: 'scheduled' } as const,
    mostShownInARow: 3,
    hardReps: { fromLevel: 0.6, most: 60, fatigueLimit: 2.8 },
    condition: null,
  };
  const model = startDrill(setup({ plan }));
  return { ...model, heat: HOT, block: { ...model.block, place: 2 } };
}

describe('the next rep of a stint', () => {
  const first = liveZone('kiln-hairpin', 'gt');

  test('begins with the brakes as hot as the car left them in another corner', () => {
    const second = liveZone('quarry-drop', 'gt');
    const { setup: now, live, heat } = setUpPlannedRep(beforeSecond(first, second));
    expect(now.live?.sheet.id).toBe('quarry-drop');
    expect(now.target).toBe(second.target);
    expect(live).toBe(second.live?.first);
    expect(heat).toBe(HOT);
  });

  test('in another car begins with cold ones', () => {
    const { setup: now, heat } = setUpPlannedRep(
      beforeSecond(first, liveZone('quarry-drop', 'touring')),
    );
    expect(now.live?.car.id).toBe('touring');
    expect(heat).toBeNull();
  });

  test('over time has no car at all', () => {
    const { setup: now, live, heat } = setUpPlannedRep(beforeSecond(first, OVER_TIME));
    expect(now).toMatchObject({ target: RAMP, live: null });
    expect(live).toBeNull();
    expect(heat).toBeNull();
  });
});
