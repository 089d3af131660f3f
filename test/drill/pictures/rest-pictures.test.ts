import { describe, expect, test } from 'vitest';
import { PICTURES } from '../../../src/drill/display/display-settings.ts';
import { nextPicture } from '../../../src/drill/pictures/pictures-now.ts';
import type { RestPictures } from '../../../src/drill/pictures/rest-pictures.ts';
import { viewOf } from '../../../src/drill/view-of.ts';
import { driveRecord } from '../../../src/live/drive-record.ts';
import { aScore } from '../../history/fixtures.ts';
import { type Fed, feed, fresh, press, RAMP, type Script, START_S } from '../drill-rig.ts';
import { CUE_S, follows, liveDrill, scoredRep, ZONE } from '../live/live-bench.ts';

const played = (toS: number, script: Script = follows()): Fed =>
  feed(liveDrill(), script, { fromS: 0, toS, outcome: aScore() });
const pictures = ({ model }: Fed): RestPictures | null => viewOf(model).pictures;
const chosen = ({ model }: Fed): string => viewOf(model).display.picture;

const RESTING_S = CUE_S + 9;

describe('after a rep of the live car', () => {
  test('nothing is shown before the result may be read', () => {
    expect(pictures(played(CUE_S + 2))).toBeNull();
    expect(pictures(played(CUE_S + 5.5))).toBeNull();
    expect(pictures(played(RESTING_S))).toMatchObject({ coupling: null, above: null });
  });

  test('its accelerations take off the speed that the car has lost, from the brake point to the slowest', () => {
    const fed = played(RESTING_S);
    const { placeM, accelXMps2 } = pictures(fed)!.gg!.own[0]!;
    const { columns } = driveRecord(ZONE, scoredRep(fed.effects).record);
    const speedAt = (sM: number): number =>
      columns.speedMps[columns.placeM.findIndex((at) => at >= sM)]!;
    // Work of a force along the way: the integral of a ds is half the change of v^2.
    let work = 0;
    for (let i = 1; i < placeM.length; i++)
      work += ((accelXMps2[i]! + accelXMps2[i - 1]!) / 2) * (placeM[i]! - placeM[i - 1]!);
    const [from, to] = [speedAt(placeM[0]!), speedAt(placeM.at(-1)!)];
    expect(from - to).toBeGreaterThan(40);
    expect(work / ((to ** 2 - from ** 2) / 2)).toBeCloseTo(1, 2);
    expect(placeM.at(-1)!).toBeLessThanOrEqual(ZONE.derived.zone.slowestM);
  });

  test('across, on the rail, it is what speed and curvature give', () => {
    const { placeM, accelYMps2 } = pictures(played(RESTING_S))!.gg!.own[0]!;
    const { columns } = driveRecord(ZONE, scoredRep(played(RESTING_S).effects).record);
    const i = placeM.findIndex((sM) => sM >= 30);
    const at = columns.placeM.findIndex((sM) => sM >= placeM[i]!);
    const curvature = ZONE.corner.path.curvatureAt(placeM[i]!);
    expect(accelYMps2[i]!).toBeCloseTo(curvature * columns.speedMps[at]! ** 2, 0);
    expect(accelYMps2[i]!).toBeGreaterThan(8);
  });

  test('the key goes on to what there is, and round: a rig without a wheel has no steering to show', () => {
    const fed = played(RESTING_S);
    expect(['usual', 'gg', 'curve', 'usual']).toEqual(
      [0, 1, 2, 3].map((times) => chosen(press(fed, ...Array(times).fill('picture')))),
    );
    const kept = press(fed, 'picture').effects.at(-1);
    expect(kept).toMatchObject({ kind: 'display', settings: { picture: 'gg' } });
  });

  test('a block shows its reps together, and from above where each braked', () => {
    const summary = press(played(RESTING_S), 'finish');
    expect(viewOf(summary.model).phase).toBe('summary');
    const { gg, above } = pictures(summary)!;
    expect(gg!.own).toHaveLength(1);
    const braked = above!.marks.filter(({ kind }) => kind === 'brake point');
    expect(braked.map(({ sM }) => sM)).toEqual([gg!.own[0]!.placeM[0]]);
    expect(above!.marks.map(({ kind }) => kind)).toContain('target downshift');
  });
});

describe('after a rep over time', () => {
  const steered: Script = {
    brake: (t) => RAMP.level.at(t - START_S),
    steering: (t) => Math.max(0, 40 * (t - START_S)),
  };
  const rested = (script: Script): Fed =>
    feed(fresh(), script, { fromS: 0, toS: START_S + 5, outcome: aScore() });

  test('steering against brake, and no g-g diagram without a car', () => {
    const fed = rested(steered);
    expect(pictures(fed)).toMatchObject({ gg: null, above: null, coupling: { target: null } });
    const { level, steeringDeg } = pictures(fed)!.coupling!.own[0]!;
    expect(level).toHaveLength(steeringDeg.length);
    expect(chosen(press(fed, 'picture'))).toBe('coupling');
    expect(chosen(press(fed, 'picture', 'picture'))).toBe('usual');
  });

  test('a rep that was not scored has none', () => {
    const fed = feed(fresh(), steered, { fromS: 0, toS: START_S + 5 });
    expect(pictures(fed)).toBeNull();
  });
});

test('the next picture is the next that there is, and itself where it is alone', () => {
  expect(nextPicture('usual', PICTURES)).toBe('gg');
  expect(nextPicture('curve', PICTURES)).toBe('usual');
  expect(nextPicture('gg', ['usual', 'above'])).toBe('above');
  expect(nextPicture('usual', ['usual'])).toBe('usual');
});
