import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import type { EditMessage } from '../../../src/target/edit/edit-message.ts';
import {
  type EditModel,
  editedText,
  isChanged,
  selectedPoint,
  startEdit,
} from '../../../src/target/edit/edit-model.ts';
import { updateEdit } from '../../../src/target/edit/update-edit.ts';
import { checkTarget } from '../../../src/target/read-target.ts';

const BUNDLED = new URL('../../../profiles/targets/', import.meta.url);
const bundled = (id: string) => readFileSync(new URL(`${id}.yaml`, BUNDLED), 'utf8');
const IDS = readdirSync(BUNDLED).map((name) => name.replace('.yaml', ''));

function start(text: string): EditModel {
  const now = editedText(text, 'own.yaml');
  if (typeof now === 'string') throw new Error(now);
  return startEdit(now, 'own.yaml', true);
}

function pressing(model: EditModel, ...messages: readonly EditMessage[]): EditModel {
  return messages.reduce((last, message) => updateEdit(last, message)[0], model);
}

/** The model with the point of that name chosen. */
function choosing(model: EditModel, name: string): EditModel {
  let next = model;
  for (let i = 0; i < 30 && selectedPoint(next).name !== name; i++)
    next = pressing(next, { kind: 'choose', by: 1 });
  expect(selectedPoint(next).name).toBe(name);
  return next;
}

const LATER: EditMessage = { kind: 'move', by: 1, reach: 'alone' };
const EARLIER: EditMessage = { kind: 'move', by: -1, reach: 'alone' };
const ALL_LATER: EditMessage = { kind: 'move', by: 1, reach: 'with-rest' };
const MORE: EditMessage = { kind: 'level', by: 1 };
const LESS: EditMessage = { kind: 'level', by: -1 };
const UNDO: EditMessage = { kind: 'undo' };
const COARSER: EditMessage = { kind: 'step', by: 1 };

const data = ({ now }: EditModel) => parse(now.text);

describe('a target over time: lengths are changed so that only the chosen point moves', () => {
  const hairpin = () => start(bundled('hairpin'));

  // rise 0.24, hold 0.24, release 1.70: peak at 0.24, start of release at 0.48, brake off at 2.18.
  test('the peak later takes from the plateau', () => {
    const { rise, hold_s, release } = data(pressing(choosing(hairpin(), 'peak'), LATER));
    expect([rise.duration_s, hold_s, release.duration_s]).toEqual([0.25, 0.23, 1.7]);
  });

  test('the start of release later takes from the release', () => {
    const { rise, hold_s, release } = data(
      pressing(choosing(hairpin(), 'start of release'), LATER),
    );
    expect([rise.duration_s, hold_s, release.duration_s]).toEqual([0.24, 0.25, 1.69]);
  });

  test('with all that follows the release keeps its length', () => {
    const { hold_s, release } = data(pressing(choosing(hairpin(), 'start of release'), ALL_LATER));
    expect([hold_s, release.duration_s]).toEqual([0.25, 1.7]);
  });

  test('brake off, turn-in and apex', () => {
    const off = pressing(choosing(hairpin(), 'brake off'), EARLIER);
    expect(data(off).release.duration_s).toBe(1.69);
    const turned = pressing(choosing(off, 'turn-in'), LATER, LATER);
    expect(data(pressing(choosing(turned, 'apex'), EARLIER))).toMatchObject({
      turn_in_s: 0.97,
      apex_s: 2.29,
    });
  });

  test('levels, the number of a shape, and a corridor that was not in the file', () => {
    expect(data(pressing(choosing(hairpin(), 'peak'), LESS)).peak_level).toBe(0.84);
    const shaped = pressing(choosing(hairpin(), 'exponent of the release'), MORE);
    expect(data(shaped).release.exponent).toBe(1.5);
    const { corridor } = data(pressing(choosing(hairpin(), 'corridor, share'), MORE));
    expect(corridor).toEqual({ floor_level: 0.015, share: 0.06 });
  });

  test('comments and the other lines stay', () => {
    const before = bundled('hairpin').split('\n');
    const lines = pressing(choosing(hairpin(), 'peak'), LATER).now.text.split('\n');
    expect(lines.filter((line, i) => line !== before[i])).toEqual([
      '  duration_s: 0.25',
      'hold_s: 0.23',
    ]);
  });
});

describe('a target over distance: places count down to the slowest point', () => {
  const corner = () => start(bundled('right-angle'));

  // brake point 88, rise 12.5 to 75.5, hold 10 to 65.5, release to 0.
  test('the peak a metre later takes from the plateau', () => {
    const { rise, hold_m } = data(pressing(choosing(corner(), 'peak'), LATER));
    expect([rise.length_m, hold_m]).toEqual([13.5, 9]);
  });

  test('the brake point alone makes the rise shorter, with the rest it moves the curve', () => {
    const alone = data(pressing(choosing(corner(), 'brake point'), LATER));
    expect([alone.brake_point_m, alone.rise.length_m]).toEqual([87, 11.5]);
    const off = pressing(choosing(corner(), 'brake off'), EARLIER);
    const rest = data(pressing(choosing(off, 'brake point'), ALL_LATER));
    expect([rest.brake_point_m, rest.rise.length_m, rest.hold_m]).toEqual([87, 12.5, 10]);
    expect([off.now.file.release, rest.release.brake_off_m]).toMatchObject([{ brake_off_m: 1 }, 0]);
  });
});

describe('knots', () => {
  const knots = () => start(bundled('double-apex'));

  test('one moves alone, or with those behind it and brake off', () => {
    const alone = data(pressing(choosing(knots(), 'knot 2 of 5'), LATER, LESS));
    expect(alone.release.knots[1]).toEqual({ time_s: 1.06, level: 0.34 });
    expect(alone.release.knots[2].time_s).toBe(1.45);
    const rest = data(pressing(choosing(knots(), 'knot 2 of 5'), ALL_LATER));
    const times = rest.release.knots.map(({ time_s }: { time_s: number }) => time_s);
    expect(times).toEqual([0.65, 1.06, 1.46, 1.96, 2.41]);
    expect(rest.release.duration_s).toBe(2.41);
  });

  test('one is added halfway on the curve and chosen, and taken out again', () => {
    const more = pressing(choosing(knots(), 'knot 2 of 5'), { kind: 'add-knot' });
    expect(selectedPoint(more).name).toBe('knot 3 of 6');
    const added = data(more).release.knots[2];
    expect(added.time_s).toBe(1.25);
    expect(added.level).toBeCloseTo(knots().now.target.level.at(1.25), 3);
    expect(pressing(more, { kind: 'remove' }).now.text).toBe(bundled('double-apex'));
  });

  test('one that would rise is refused with the reason, and the text stays', () => {
    const up = pressing(choosing(knots(), 'knot 2 of 5'), ...Array<EditMessage>(32).fill(MORE));
    expect(data(up).release.knots[1].level).toBe(0.66);
    expect(up.said).toEqual({
      kind: 'refused',
      words: 'the level goes up to 0.67 during the release. Use at most 0.66.',
    });
  });

  test('one that would pass its neighbour is refused', () => {
    const late = pressing(
      choosing(knots(), 'knot 2 of 5'),
      COARSER,
      COARSER,
      LATER,
      LATER,
      LATER,
      LATER,
    );
    expect(data(late).release.knots[1].time_s).toBe(1.35);
    expect(late.said?.words).toMatch(/^the knot is out of order/);
  });

  test('a power law becomes knots that lie on it', () => {
    const made = pressing(choosing(start(bundled('hairpin')), 'brake off'), { kind: 'add-knot' });
    expect(data(made).release).not.toHaveProperty('exponent');
    for (let timeS = 0.5; timeS < 2.2; timeS += 0.05) {
      // (1 - u)^1.4 of 0.85, by the closed form.
      const wanted = 0.85 * Math.max(0, 1 - (timeS - 0.48) / 1.7) ** 1.4;
      expect(Math.abs(made.now.target.level.at(timeS) - wanted)).toBeLessThan(0.006);
    }
  });
});

test('every shape of the release in turn is a sound target, and undo goes all the way back', () => {
  let model = start(bundled('right-angle'));
  const shapes = Array.from({ length: 6 }, () => {
    model = pressing(model, { kind: 'form' });
    expect(model.said?.kind).toBe('done');
    return data(model).release.shape;
  });
  expect(new Set(shapes).size).toBe(6);
  expect(shapes.at(-1)).toBe('raised-cosine');
  expect(pressing(model, ...Array<EditMessage>(6).fill(UNDO)).now.text).toBe(
    bundled('right-angle'),
  );
});

test.each(['hairpin', 'right-angle'])('a bleed comes and goes in %s', (id) => {
  const before = start(bundled(id));
  const bled = pressing(before, { kind: 'bleed' });
  expect(bled.said?.words).toBe('A bleed was added.');
  expect(selectedPoint(bled).name).toBe('start of release');
  expect(bled.now.target.marks.brakeOff).toBeCloseTo(before.now.target.marks.brakeOff, 6);
  const gone = pressing(bled, { kind: 'remove' });
  expect(parse(gone.now.text)).toEqual(parse(bundled(id)));
});

describe('saving and leaving', () => {
  const edited = () => pressing(choosing(start(bundled('hairpin')), 'peak'), LESS);

  test('without changes q leaves at once, with changes it asks once', () => {
    expect(updateEdit(start(bundled('hairpin')), { kind: 'quit' })[1]).toEqual([{ kind: 'quit' }]);
    const [asking, nothing] = updateEdit(edited(), { kind: 'quit' });
    expect([asking.question?.kind, nothing]).toEqual(['quit', []]);
    expect(updateEdit(asking, { kind: 'quit' })[1]).toEqual([{ kind: 'quit' }]);
    expect(updateEdit(asking, { kind: 'close' })).toMatchObject([{ question: null }, []]);
    const [, [write]] = updateEdit(asking, { kind: 'save' });
    expect(write).toMatchObject({ kind: 'write', thenQuit: true, path: null });
  });

  test('what was saved is no change, and undoing beyond it is one again', () => {
    const model = edited();
    const { text } = model.now;
    const saved = pressing(model, { kind: 'saved', text, path: 'own.yaml', quit: false });
    expect([isChanged(model), isChanged(saved), isChanged(pressing(saved, UNDO))]).toEqual([
      true,
      false,
      true,
    ]);
  });

  test('a file that changed on disk is saved beside it, or not at all', () => {
    const changed: EditMessage = { kind: 'changed-on-disk', beside: 'own-2.yaml', quit: false };
    const asking = pressing(edited(), changed);
    expect(updateEdit(asking, { kind: 'yes' })[1]).toMatchObject([{ path: 'own-2.yaml' }]);
    expect(updateEdit(asking, { kind: 'no' })[1]).toEqual([]);
    expect(isChanged(pressing(asking, { kind: 'no' }))).toBe(true);
  });

  test('what an earlier run left is restored, and undo goes back to the file', () => {
    const text = edited().now.text;
    const question = { kind: 'restore', text, fileIsNewer: false } as const;
    const asking = { ...start(bundled('hairpin')), question };
    const restored = pressing(asking, { kind: 'yes' });
    expect(restored.now.text).toBe(text);
    expect(isChanged(restored)).toBe(true);
    expect(pressing(restored, UNDO).now.text).toBe(bundled('hairpin'));
    expect(updateEdit(asking, { kind: 'no' })[1]).toEqual([{ kind: 'drop-kept' }]);
  });
});

const KEYS: fc.Arbitrary<EditMessage> = fc.oneof(
  fc.record({ kind: fc.constant('choose' as const), by: fc.constantFrom(1 as const, -1 as const) }),
  fc.record({
    kind: fc.constant('move' as const),
    by: fc.constantFrom(1 as const, -1 as const),
    reach: fc.constantFrom('alone' as const, 'with-rest' as const),
  }),
  fc.record({
    kind: fc.constantFrom('level' as const, 'step' as const),
    by: fc.constantFrom(1 as const, -1 as const),
  }),
  fc.constantFrom<EditMessage>(
    { kind: 'add-knot' },
    { kind: 'remove' },
    { kind: 'bleed' },
    { kind: 'form' },
  ),
);
const OWN_LAYOUTS = [
  'name: A\ncorner_type: t\ndomain: time\nrise: { duration_s: 0.2 }\npeak_level: 0.8\nrelease: { duration_s: 1, shape: linear }',
  '{ name: A, corner_type: t, domain: distance, entry_speed_kmh: 180, slowest_speed_kmh: 90, brake_point_m: 90, rise: { length_m: 10 }, peak_level: 0.8, release: { shape: knots, knots: [{ distance_m: 40, level: 0.3 }] } }\n',
];

describe('any sequence of keys', () => {
  const texts = [...IDS.map(bundled), ...OWN_LAYOUTS];
  const presses = fc.tuple(
    fc.constantFrom(...texts),
    fc.array(KEYS, { minLength: 1, maxLength: 30 }),
  );

  test('gives a sound target after each key, or the key is refused with a reason', () => {
    fc.assert(
      fc.property(presses, ([text, keys]) => {
        let model = start(text);
        for (const key of keys) {
          const next = pressing(model, key);
          const isEdit = key.kind !== 'choose' && key.kind !== 'step';
          if (isEdit && next.now.text === model.now.text) {
            expect(next.said?.kind).toBe('refused');
            expect(next.said?.words).toMatch(/\.$/);
          }
          expect(checkTarget(next.now.text, 'own.yaml').kind).toBe('read');
          model = next;
        }
      }),
      { numRuns: 30 },
    );
  });

  test('is undone to the same bytes, and done again to the same bytes', () => {
    fc.assert(
      fc.property(presses, ([text, keys]) => {
        const done = pressing(start(text), ...keys);
        const undone = pressing(done, ...done.undo.map(() => UNDO));
        expect(undone.now.text).toBe(text);
        const again = pressing(undone, ...undone.redo.map((): EditMessage => ({ kind: 'redo' })));
        expect(again.now.text).toBe(done.now.text);
      }),
      { numRuns: 30 },
    );
  });

  test('keeps every comment of a file but those of what it took out', () => {
    const moves = KEYS.filter(
      ({ kind }) => kind !== 'remove' && kind !== 'form' && kind !== 'add-knot',
    );
    fc.assert(
      fc.property(fc.constantFrom(...IDS), fc.array(moves, { maxLength: 30 }), (id, keys) => {
        const comments = (text: string) => [...text.matchAll(/#.*$/gm)].map(([found]) => found);
        const text = bundled(id);
        expect(comments(pressing(start(text), ...keys).now.text)).toEqual(comments(text));
      }),
      { numRuns: 20 },
    );
  });
});
