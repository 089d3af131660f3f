import { afterAll, bench, describe } from 'vitest';
import { addSample, NO_DEVIATION } from '../../src/score/deviation.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { braking, record, SHAPE, shapeTarget } from '../score/curves.ts';

/** Seeded noise of 2.7 % of the level, so that every run scores the same reps (a 32-bit xorshift, Marsaglia 2003). */
function noise(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32 - 0.5;
  };
}

const random = noise(20_240_607);
const target = shapeTarget(SHAPE);
const level = braking({ ...SHAPE, holdS: 0.2, releaseS: 1.35 });
const rep = record((t) => Math.max(0, level(t) * (1 + 0.027 * 3.46 * random())));
const { value } = rep.brake;
const aim = Float64Array.from(rep.brake.timeS, (timeS) => target.level.at(timeS));

let sink = 0;

describe(`one rep of ${value.length} samples`, () => {
  bench('floor: plain sum over the samples', () => {
    let sum = 0;
    for (let i = 0; i < value.length; i++) sum += value[i]!;
    sink += sum;
  });

  bench('live error, sample by sample', () => {
    let deviation = NO_DEVIATION;
    for (let i = 0; i < value.length; i++) {
      deviation = addSample(deviation, value[i]!, aim[i]!, 0.001);
    }
    sink += deviation.square;
  });

  bench('scoreRep', () => {
    sink += scoreRep(rep, target).score;
  });
});

/** Reads the sums, so that the loops are not optimised away. */
afterAll(() => {
  if (!Number.isFinite(sink)) throw new Error(`the sums came to ${sink}`);
});
