import type { CarFile } from '../../src/car/car-file.ts';
import { checkCar } from '../../src/car/check-car.ts';
import { checkEvent } from '../../src/drill/event/check-event.ts';
import type { CircuitEvent } from '../../src/drill/event/circuit-event.ts';
import { checkPlan } from '../../src/drill/plan/check-plan.ts';
import type { PracticePlan } from '../../src/drill/plan/practice-plan.ts';
import { soundValue } from '../../src/profile/profile-reading.ts';

/** The car in the text of a file that has no problems. @throws Problem where it has some; so do the others */
export function readCar(text: string, fileName: string): CarFile {
  return soundValue(checkCar(text, fileName), fileName);
}

export function readPlan(text: string, fileName: string): PracticePlan {
  return soundValue(checkPlan(text, fileName), fileName);
}

export function readEvent(text: string, fileName: string): CircuitEvent {
  return soundValue(checkEvent(text, fileName), fileName);
}
