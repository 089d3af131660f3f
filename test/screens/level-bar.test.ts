import fc from 'fast-check';
import { expect, test } from 'vitest';
import { levelBar, steeringBar } from '../../src/screens/level-bar.ts';

test.each([
  [0, '░░░░'],
  [1, '████'],
  [0.5, '██░░'],
  [1 / 32, '▏░░░'],
  [7 / 32, '▉░░░'],
  [0.65625, '██▋░'],
  [-1, '░░░░'],
  [3, '████'],
])('level %d', (level, bar) => expect(levelBar(level, 4)).toBe(bar));

test.each([
  [0, '░░░░┼░░░░'],
  [0.25, '░░░◀┼░░░░'],
  [1, '◀━━━┼░░░░'],
  [-0.5, '░░░░┼━▶░░'],
  [-2, '░░░░┼━━━▶'],
])('steering %d, left positive', (share, bar) => expect(steeringBar(share, 9)).toBe(bar));

test('a bar always has its width and never shrinks as the level grows', () => {
  const filled = (bar: string) => [...bar].filter((cell) => cell === '█').length;
  fc.assert(
    fc.property(fc.double({ noNaN: true }), fc.integer({ min: 1, max: 60 }), (level, width) => {
      expect([...levelBar(level, width)]).toHaveLength(width);
      expect(filled(levelBar(level + 0.1, width))).toBeGreaterThanOrEqual(
        filled(levelBar(level, width)),
      );
    }),
  );
});
