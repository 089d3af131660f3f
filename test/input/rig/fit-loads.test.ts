import { describe, expect, test } from 'vitest';
import { fitLoads, type KnownLoad } from '../../../src/input/rig/fit-loads.ts';
import { fullScaleNewtons, newtonsAt } from '../../../src/input/rig/load-newtons.ts';
import { Problem } from '../../../src/problem.ts';
import { calibration } from './calibration.ts';

const load = (newtons: number, counts: number): KnownLoad => ({ newtons, counts });

describe('fitLoads', () => {
  test('two loads give the line between them, unchecked', () => {
    const fit = fitLoads([load(100, 600), load(300, 1400)]);
    expect(fit.newtonsPerCount).toBeCloseTo(0.25, 12);
    expect(fit.zeroCounts).toBeCloseTo(200, 9);
    expect(fit.residualN).toBeNull();
    expect(newtonsAt(fit, 1400)).toBeCloseTo(300, 9);
  });

  test('three loads are fitted with their residual', () => {
    // Around 0.2 N a count the residuals are 1, -2, 1 N: sum of squares 6, one degree of freedom.
    const fit = fitLoads([load(101, 500), load(198, 1000), load(301, 1500)]);
    expect(fit.newtonsPerCount).toBeCloseTo(0.2, 12);
    expect(fit.zeroCounts).toBeCloseTo(0, 9);
    expect(fit.residualN).toBeCloseTo(Math.sqrt(6), 9);
  });

  test('a sensor that counts down has a falling line', () => {
    const fit = fitLoads([load(0, 4000), load(200, 3000), load(400, 2000)]);
    expect(fit.newtonsPerCount).toBeCloseTo(-0.2, 12);
    expect(fit.zeroCounts).toBeCloseTo(4000, 9);
  });

  test('the order of loads does not matter, and one may be given twice', () => {
    const loads = [load(300, 1500), load(100, 500), load(100, 510), load(200, 1000)];
    expect(fitLoads(loads).newtonsPerCount).toBeCloseTo(
      fitLoads([...loads].reverse()).newtonsPerCount,
      12,
    );
  });

  test.each<[string, KnownLoad[], string]>([
    ['no load', [], 'one load alone'],
    ['one load', [load(100, 500)], 'one load alone'],
    ['the same load twice', [load(100, 500), load(100, 510)], 'one load alone'],
    ['the same counts', [load(100, 500), load(200, 500)], '200 N gave 500 counts'],
    ['counts that stop', [load(100, 500), load(200, 1000), load(300, 1000)], '300 N gave 1000'],
    ['counts that turn', [load(100, 500), load(200, 1100), load(300, 1000)], '300 N gave 1000'],
    ['a load below zero', [load(-1, 500), load(200, 1000)], '-1 N'],
    ['no number', [load(Number.NaN, 500), load(200, 1000)], 'NaN N'],
    ['no counts', [load(1, Number.POSITIVE_INFINITY), load(200, 1000)], 'Infinity counts'],
  ])('refuses %s', (_name, loads, words) => {
    expect(() => fitLoads(loads)).toThrow(Problem);
    expect(() => fitLoads(loads)).toThrow(words);
  });

  test('refuses loads further off a line than 2.5 % of the largest, and takes them just inside', () => {
    // Residuals d, -2d, d have a standard deviation of sqrt(6) d; 2.5 % of 300 + d is reached at d = 3.09.
    const bent = (d: number): KnownLoad[] => [
      load(100 + d, 500),
      load(200 - 2 * d, 1000),
      load(300 + d, 1500),
    ];
    expect(fitLoads(bent(3)).residualN).toBeCloseTo(Math.sqrt(6) * 3, 9);
    expect(() => fitLoads(bent(3.2))).toThrow('off a straight line, more than 7.6 N (2.5 %');
  });
});

describe('fullScaleNewtons', () => {
  const fit = fitLoads([load(100, 600), load(300, 1400)]);

  test('is the force at full, or at the dead zone before it', () => {
    expect(fullScaleNewtons(calibration(200, 4200, { load: fit }))).toBeCloseTo(1000, 9);
    expect(fullScaleNewtons(calibration(200, 4200, { load: fit, deadEnd: 0.1 }))).toBeCloseTo(
      900,
      9,
    );
  });

  test('is null without known loads', () => {
    expect(fullScaleNewtons(calibration(200, 4200))).toBeNull();
  });
});
