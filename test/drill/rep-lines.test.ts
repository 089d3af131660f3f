import { describe, expect, test } from 'vitest';
import type { DrillModel } from '../../src/drill/drill-model.ts';
import { repLines } from '../../src/drill/rep-lines.ts';
import { feed, fresh, RAMP, type Script, START_S } from './drill-rig.ts';

const script: Script = { brake: (t) => RAMP.level.at(t - START_S) };
/** The rep ends 0.6 s after brake off, which is 1.4 s after its start; its score is held back for 2.5 s. */
const END_S = START_S + 2.01;
const REVEAL_S = END_S + 2.5;

const until = (toS: number): DrillModel => feed(fresh(), script, { fromS: 0, toS }).model;
const later = (model: DrillModel, fromS: number, toS: number): DrillModel =>
  feed(model, script, { fromS, toS }).model;

describe('the lines of the last reps', () => {
  test('are the same list while they say the same', () => {
    const held = until(END_S + 0.5);
    const [line] = repLines(held);
    expect(line).toMatchObject({ number: 1, outcome: null });
    expect(repLines(later(held, END_S + 0.5, REVEAL_S - 0.1))).toBe(repLines(held));
    const shown = later(held, END_S + 0.5, REVEAL_S + 0.1);
    expect(repLines(later(shown, REVEAL_S + 0.1, REVEAL_S + 1))).toBe(repLines(shown));
  });

  test('are another list when a score may be read, and go back with the clock', () => {
    const held = until(END_S + 0.5);
    const shown = later(held, END_S + 0.5, REVEAL_S + 0.1);
    expect(repLines(held)[0]!.outcome).toBeNull();
    expect(repLines(shown)[0]!.outcome).not.toBeNull();
    expect(repLines(held)[0]!.outcome).toBeNull();
  });
});
