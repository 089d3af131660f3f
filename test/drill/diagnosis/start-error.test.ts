import { expect, test } from 'vitest';
import type { DiagnosedRep } from '../../../src/drill/diagnosis/diagnosed-rep.ts';
import { startSentence } from '../../../src/drill/diagnosis/diagnosis-sentences.ts';
import { startError } from '../../../src/drill/diagnosis/start-error.ts';
import { NEVER_BRAKED } from '../drill-rig.ts';
import { rampRep } from './ramp-reps.ts';

/** Pressed so many seconds after the cue, which is at 0. */
const pressed = (pressedAtS: number, place = 1): DiagnosedRep => rampRep({ pressedAtS }, place);

test('is when the foot came down after the cue: 0.12 s in the middle of -0.05, 0.12 and 0.2 s', () => {
  const reps = [pressed(0.12), pressed(-0.05, 2), pressed(0.2, 3)];
  const found = startError(reps)!;
  expect(found.reps).toBe(3);
  expect(found.medianS).toBeCloseTo(0.12, 6);
  expect(found.earliestS).toBeCloseTo(-0.05, 6);
  expect(found.latestS).toBeCloseTo(0.2, 6);
  expect(startSentence(found)).toBe('braked 0.12 s after the cue (-0.05 to +0.20)');
  expect(startSentence(startError([pressed(-0.1)]))).toBe('braked 0.10 s before the cue');
});

test('reps without braking, void ones and those of a live car have none', () => {
  const rep = pressed(0.1);
  const { outcome } = rep;
  if (outcome?.kind !== 'scored') throw new Error('not a rep');
  const live = { ...rep, outcome: { ...outcome, live: {} as NonNullable<typeof outcome.live> } };
  const none = { ...rep, curve: null };
  expect(
    startError([
      live,
      { ...none, outcome: NEVER_BRAKED },
      { ...none, outcome: null, voided: 'aborted' },
    ]),
  ).toBeNull();
  expect(startSentence(null)).toBe('');
});
