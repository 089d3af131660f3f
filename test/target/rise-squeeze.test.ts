import fc from 'fast-check';
import { expect, test } from 'vitest';
import { buildTarget } from '../../src/target/build-target.ts';
import { readTarget } from '../../src/target/read-target.ts';
import { RISE_SHAPES, riseShare } from '../../src/target/rise-shape.ts';
import { riseAlong } from '../../src/target/rise-squeeze.ts';
import { specOfFile } from '../../src/target/spec-of-file.ts';

const SQUEEZE = { fromShare: 0.6, afterShare: 0.4, eFolds: 2 };

test('values by hand', () => {
  const rise = riseAlong('linear', SQUEEZE);
  // A straight push through (0.4, 0.6).
  expect(rise(0.2)).toBeCloseTo(0.3, 12);
  expect(rise(0.4)).toBeCloseTo(0.6, 12);
  // Half of the squeeze is over: (e^-1 - e^-2) / (1 - e^-2) = 1 / (e + 1) = 0.268941421 of 0.4 is missing.
  expect(rise(0.7)).toBeCloseTo(1 - 0.4 * 0.268941421, 9);
  expect(rise(1)).toBeCloseTo(1, 12);
  // A minimum-jerk push to half of the peak is its first half: 10 u^3 - 15 u^4 + 6 u^5 at 1/4 is 0.103515625.
  const half = riseAlong('minimum-jerk', { fromShare: 0.5, afterShare: 0.2, eFolds: 3 });
  expect(half(0.1)).toBeCloseTo(0.103515625, 9);
  expect(half(0.2)).toBeCloseTo(0.5, 9);
});

test('without a squeeze it is the shape', () => {
  for (const shape of RISE_SHAPES) expect(riseAlong(shape)(0.3)).toBe(riseShare(shape)(0.3));
});

test('it rises all the way from nothing to the peak', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...RISE_SHAPES),
      fc.record({
        fromShare: fc.double({ min: 0.1, max: 0.99, noNaN: true }),
        afterShare: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        eFolds: fc.double({ min: 0.1, max: 12, noNaN: true }),
      }),
      (shape, squeeze) => {
        const rise = riseAlong(shape, squeeze);
        expect(rise(0)).toBe(0);
        expect(rise(1)).toBeCloseTo(1, 9);
        for (let i = 1; i <= 200; i++)
          expect(rise(i / 200)).toBeGreaterThanOrEqual(rise((i - 1) / 200));
      },
    ),
  );
});

const FILE = `name: Squeezed
corner_type: hairpin
domain: time
rise:
  duration_s: 0.5
  shape: linear
  squeeze: { from_share: 0.6, after_share: 0.4, e_folds: 2 }
peak_level: 0.8
release: { duration_s: 1, shape: linear }
`;

test('a file says it, and its target rises so', () => {
  const { level } = readTarget(FILE, 'squeezed.yaml');
  expect(level.at(0.1)).toBeCloseTo(0.8 * 0.3, 3);
  expect(level.at(0.35)).toBeCloseTo(0.8 * (1 - 0.4 * 0.268941421), 3);
  expect(() => readTarget(FILE.replace('0.6', '1.2'), 'squeezed.yaml')).toThrow(
    /from_share is 1.2/,
  );
});

test('it is part of the version, and a file without one keeps its own', () => {
  const plain = FILE.split('\n')
    .filter((line) => !line.includes('squeeze'))
    .join('\n');
  const file = {
    name: 'Squeezed',
    corner_type: 'hairpin',
    domain: 'time',
    rise: { duration_s: 0.5, shape: 'linear' },
    peak_level: 0.8,
    release: { duration_s: 1, shape: 'linear' },
  } as const;
  const version = readTarget(plain, 'squeezed.yaml').version;
  expect(version).not.toBe(readTarget(FILE, 'squeezed.yaml').version);
  const spec = specOfFile(file, 'squeezed');
  expect(Object.keys(spec.phases.rise)).toEqual(['length', 'shape']);
  expect(buildTarget(spec).version).toBe(version);
});
