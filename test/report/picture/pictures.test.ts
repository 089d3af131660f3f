import { scaleLinear } from 'd3-scale';
import { describe, expect, test } from 'vitest';
import type { WeekRow } from '../../../src/consistency/weeks/week-rows.ts';
import { alongHead, alongRoad, blockAxis } from '../../../src/report/picture/block-axis.ts';
import { controlPicture } from '../../../src/report/picture/control-picture.ts';
import { couplingPicture } from '../../../src/report/picture/coupling-picture.ts';
import { linePath, shownPlaces } from '../../../src/report/picture/curves.ts';
import { legend } from '../../../src/report/picture/legend.ts';
import { type Picture, pictureFile } from '../../../src/report/picture/picture.ts';
import { placedWeeks, weekRuns } from '../../../src/report/picture/placed-weeks.ts';
import { blockPictures } from '../../../src/report/review/block-pictures.ts';
import { seriesPictures } from '../../../src/report/review/series-pictures.ts';
import { SUMMARY } from '../../screens/sample-views.ts';
import { sampleBlock, sampleSeries } from '../sample-review.ts';

/** One tag a line, so that a change of a picture is a change of few lines. */
const readable = (picture: Picture): string => pictureFile(picture).replaceAll('><', '>\n<');

const pathOf = (picture: Picture, look: string): string[] =>
  [...pictureFile(picture).matchAll(new RegExp(`class="line ${look}" d="([^"]*)"`, 'g'))].map(
    ([, d]) => d!,
  );

/** Points of a path that is made of lines. */
const points = (d: string): number[][] =>
  [...d.matchAll(/[ML](-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);

describe('pictures, to be looked at', () => {
  test.each(seriesPictures(sampleSeries('hairpin'), 'series', null))('$id', async (picture) => {
    await expect(readable(picture)).toMatchFileSnapshot(`../golden/${picture.id}.svg`);
  });

  test('of a block', async () => {
    const [overlay, spread, wheel] = blockPictures(sampleBlock('Kiln hairpin'), 'block');
    for (const picture of [overlay!, spread!, wheel!])
      await expect(readable(picture)).toMatchFileSnapshot(`../golden/${picture.id}.svg`);
  });
});

describe('a line', () => {
  const scales = {
    x: scaleLinear().domain([0, 2]).range([0, 100]),
    y: scaleLinear().domain([0, 1]).range([50, 0]),
  };

  test('goes through its points', () => {
    const made = linePath([0, 1, 2], [0, 1, 0.5], scales, 'mean').toString();
    expect(made).toBe('<path class="line mean" d="M0,50L50,0L100,25"></path>');
  });

  test('has as many points as can be seen, and its ends', () => {
    expect(shownPlaces(5, 2)).toEqual([0, 3, 4]);
    expect(shownPlaces(4, 4)).toEqual([0, 1, 2, 3]);
    expect(shownPlaces(0)).toEqual([]);
    expect(shownPlaces(1)).toEqual([0]);
    expect(shownPlaces(1000, 240).length).toBeLessThanOrEqual(241);
  });
});

describe('reps over each other', () => {
  const block = sampleBlock('Kiln hairpin');
  const [overlay] = blockPictures(block, 'block');

  test('the target runs where its knots are: 0 s, 0 %; 0.18 s, 80 %; 2.6 s, 0 %', () => {
    const all = points(pathOf(overlay!, 'target')[1]!);
    // the grid ends 0.25 s after brake off: 2.85 s over the plot's width from 36 to 388
    const x = (timeS: number): number => 36 + (352 * timeS) / 2.85;
    expect(all[0]![0]).toBeCloseTo(x(0), 0);
    expect(all.at(-1)![0]).toBeCloseTo(x(2.85), 0);
    const base = all[0]![1]!;
    expect(all.at(-1)![1]).toBeCloseTo(base, 1);
    const at = (timeS: number): number =>
      all.reduce((best, point) =>
        Math.abs(point[0]! - x(timeS)) < Math.abs(best[0]! - x(timeS)) ? point : best,
      )[1]!;
    // heights are in proportion to levels: 80 % of the plateau against 30 % at 1.7 s
    expect((base - at(0.4)) / (base - at(1.7))).toBeCloseTo(0.8 / 0.3, 1);
  });

  test('every rep is drawn thin and once more to be picked, by its number', () => {
    for (let n = 1; n <= 10; n++) {
      const [thin] = pathOf(overlay!, `rep r${n}`);
      expect(pathOf(overlay!, `picked r${n}`)).toEqual([thin]);
    }
  });

  test('the table holds the same numbers in per cent', () => {
    const { overlay: data } = SUMMARY.diagnosis;
    const { heads, rows } = overlay!.table;
    expect(heads.slice(-1)).toEqual(['rep 10 %']);
    const last = rows.at(-1)!;
    expect(Number(last[1])).toBeCloseTo(100 * data.grid.target.at(-1)!, 1);
    const mid = rows[10]!;
    const place = Math.round(Number(mid[0]) / 0.005);
    expect(Number(mid[1])).toBeCloseTo(100 * data.grid.target[place]!, 1);
    expect(Number(mid.at(-1))).toBeCloseTo(100 * data.reps[9]![place]!, 1);
  });

  test('without a rep the target stands alone, and the words say so', () => {
    const { drawn } = block;
    if (drawn.kind !== 'drawn') throw new Error('not drawn');
    const { summary } = drawn;
    const none = { ...summary.diagnosis.overlay, reps: [], mean: null, spread: null };
    const empty = {
      ...summary,
      averageErrorLevel: null,
      diagnosis: { ...summary.diagnosis, overlay: none },
    };
    const pictures = blockPictures(
      { ...block, reps: [], drawn: { ...drawn, summary: empty } },
      'b',
    );
    expect(pictures.map(({ id }) => id)).toEqual(['b-reps']);
    expect(pictures[0]!.reading).toMatch(/the target alone/);
    expect(pathOf(pictures[0]!, 'mean')).toEqual([]);
  });
});

describe('brake against wheel', () => {
  const right = {
    level: Float64Array.of(0.8, 0.4, 0),
    steeringDeg: Float64Array.of(0, -40, -80),
  };

  test('a corner to the right reads like one to the left', () => {
    const reps = [{ number: 1, coupling: right }];
    const picture = couplingPicture({ id: 'w', title: 'w', reps, target: null })!;
    const [[x0, y0], [x1, y1], [x2, y2]] = points(pathOf(picture, 'rep r1')[0]!) as [
      number[],
      number[],
      number[],
    ];
    expect(x0).toBeCloseTo(36, 0);
    expect(x2).toBeCloseTo(388, 0);
    expect(x1).toBeCloseTo((36 + 388) / 2, 0);
    expect(y1).toBeCloseTo((y0! + y2!) / 2, 0);
    expect(pictureFile(picture)).toContain('wheel, degrees right');
    expect(picture.reading).toContain('40° right of one rep');
    // half of the peak is exactly the second sample
    expect(picture.table.heads[0]).toBe('wheel, degrees right, with the brake at');
    expect(picture.table.rows).toEqual([['rep 1', '0', '0', '40', '40', '40']]);
  });

  test('a wheel that is all but straight stands at 0, on either side of it', () => {
    const straight = { level: Float64Array.of(0.8, 0), steeringDeg: Float64Array.of(-0.4, 30) };
    const picture = couplingPicture({
      ...{ id: 'w', title: 'w', target: null },
      reps: [{ number: 1, coupling: straight }],
    })!;
    expect(picture.table.heads[0]).toBe('wheel, degrees left, with the brake at');
    expect(picture.table.rows[0]!.slice(0, 2)).toEqual(['rep 1', '0']);
  });

  test('is not drawn without a wheel', () => {
    const reps = [{ number: 1, coupling: null }];
    expect(couplingPicture({ id: 'w', title: 'w', reps, target: right })).toBeNull();
  });
});

test('places along the road are told in the units asked for', () => {
  const placesM = Float64Array.of(-30.48, 0, 15.24);
  expect(alongRoad(placesM, 'metric')).toEqual({ unit: 'm', at: placesM });
  // a foot is 0.3048 m
  const inFeet = alongRoad(placesM, 'imperial');
  expect(Array.from(inFeet.at, (place) => Math.round(place))).toEqual([-100, 0, 50]);
  expect(alongHead(inFeet)).toBe('ft from turn-in');
  const axis = blockAxis(inFeet, { left: 0, right: 400, top: 0, bottom: 100 });
  expect(axis.name).toBe('place, ft from turn-in');
  expect([axis.text(-100), axis.text(50)]).toEqual(['-100', '+50']);
});

test('the pictures of a block with the live car are in the units of its review', () => {
  const block = sampleBlock('Kiln hairpin');
  if (block.drawn.kind !== 'drawn') throw new Error('not drawn');
  // the places of the sample, taken for metres
  const drawn = { ...block.drawn, along: { unit: 'm', at: block.drawn.along.at } } as const;
  const heads = (units: 'metric' | 'imperial') =>
    blockPictures({ ...block, drawn: { ...drawn, units } }, 'block').map(
      ({ table }) => table.heads[0],
    );
  expect(heads('metric').slice(0, 2)).toEqual(['m from turn-in', 'm from turn-in']);
  expect(heads('imperial').slice(0, 2)).toEqual(['ft from turn-in', 'ft from turn-in']);
});

describe('weeks', () => {
  const known = (value: number | null) => ({
    medianReleaseErrorLevel: { value, reps: value === null ? 0 : 9, needed: 5 },
    interval: null,
  });
  const row = (monday: string, value: number | null, more: Partial<WeekRow> = {}): WeekRow => ({
    week: 'week',
    monday,
    changed: [],
    changedOn: null,
    before: null,
    conditions: null,
    reps: value === null ? 0 : 9,
    practices: 1,
    hidden: known(value),
    firstOfDay: known(null),
    spreadLevel: { value: null, reps: 0, needed: 10 },
    ...more,
  });

  test('lie at equal distances; those of one week share it', () => {
    const rows = [
      row('2026-10-19', 0.05),
      row('2026-10-26', 0.04),
      row('2026-10-26', 0.06, { changed: ['footwear'] }),
      row('2026-11-09', 0.03),
    ];
    expect(placedWeeks(rows).map(({ at }) => at)).toEqual([0, 0.75, 1.25, 3]);
  });

  test('a line ends at a gap and at a break', () => {
    const rows = [
      row('2026-10-05', 0.05),
      row('2026-10-12', 0.05),
      row('2026-10-19', null),
      row('2026-10-26', 0.04),
      row('2026-11-02', 0.04),
      row('2026-11-09', 0.06, { changed: ['footwear'] }),
      row('2026-11-16', 0.05),
      row('2026-11-23', null),
      row('2026-11-30', 0.05),
    ];
    const runs = weekRuns(placedWeeks(rows)).map((run) => run.map(({ week }) => week));
    expect(runs).toEqual([
      [0, 1],
      [3, 4],
      [5, 6],
    ]);
  });
});

describe('the control chart', () => {
  const { chart } = sampleSeries('x').progress;

  test('needs two practices', () => {
    const one = { ...chart, points: chart.points.slice(0, 1) };
    expect(controlPicture({ id: 'c', title: 'c', chart: one, practiceId: null })).toBeNull();
  });

  test('equal factors are equal distances, so that the centre lies midway between the limits', () => {
    const limits = {
      centreLevel: 0.04,
      upperLevel: 0.08,
      lowerLevel: 0.02,
      movingRangeUpperFactor: 2,
    };
    const picture = controlPicture({
      id: 'c',
      title: 'c',
      chart: { ...chart, limits },
      practiceId: null,
    })!;
    const height = (look: string): number[] =>
      pathOf(picture, look)
        .filter((d) => d.includes('H'))
        .map((d) => Number(/,([\d.]+)H/.exec(d)![1]));
    const [upper, lower] = height('limit');
    expect(height('centre')[0]).toBeCloseTo((upper! + lower!) / 2, 0);
  });

  test('the practice of the page has a ring, one out of the ordinary a shape of its own', () => {
    const odd = { ...chart.points[1]!, signal: 'above limits' as const };
    const ordinary = chart.points.slice(2).map((point) => ({ ...point, signal: null }));
    const points = [chart.points[0]!, odd, ...ordinary];
    const subject = { id: 'c', title: 'c', chart: { ...chart, points } };
    const here = pictureFile(
      controlPicture({ ...subject, practiceId: chart.points[0]!.practiceId })!,
    );
    const elsewhere = pictureFile(controlPicture({ ...subject, practiceId: null })!);
    // one in the legend, one on the practice
    expect(here.match(/class="ring"/g)?.length).toBe(2);
    expect(elsewhere).not.toContain('class="ring"');
    expect(here.match(/class="odd"/g)?.length).toBe(2);
  });
});

test('a legend that does not fit goes on in the next row', () => {
  const entry = { name: 'does not compare across', sample: 'line', look: 'break' } as const;
  expect(legend([entry]).height).toBeLessThan(legend([entry, entry, entry]).height);
});
