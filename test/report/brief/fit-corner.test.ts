import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { BriefCorner } from '../../../src/report/brief/brief.ts';
import { fitCorner } from '../../../src/report/brief/fit-corner.ts';

const corner = (tryFirst: readonly string[], notes: readonly string[]): BriefCorner => ({
  title: 'Kiln hairpin',
  subtitle: 'hairpin',
  numbers: [{ name: 'peak', value: '726 N' }],
  sections: [
    { name: 'gears', lines: ['qualifying: gear 5 to 2'] },
    { name: 'try first', lines: tryFirst },
    { name: 'notes', lines: notes },
  ].filter(({ lines }) => lines.length > 0),
});
const lines = ({ sections }: BriefCorner, name: string) =>
  sections.find((section) => section.name === name)?.lines ?? [];

describe('a corner on paper', () => {
  test('that fits is left as it is, long lines and all', () => {
    const whole = corner(['x '.repeat(150)], ['one']);
    expect(fitCorner(whole, 20)).toBe(whole);
  });

  test('is cut between words first', () => {
    const fitted = fitCorner(corner(['word '.repeat(100)], ['one']), 6);
    expect(lines(fitted, 'try first')[0]).toMatch(/^(word )+…$/);
    expect(lines(fitted, 'notes')).toEqual(['one']);
    expect(lines(fitted, 'left out')).toEqual([]);
  });

  test('then loses its last words and oldest notes in turn, and counts them', () => {
    const fitted = fitCorner(corner(['a', 'b'], ['newest', 'older', 'oldest']), 5);
    expect(lines(fitted, 'try first')).toEqual(['a']);
    expect(lines(fitted, 'notes')).toEqual(['newest']);
    expect(lines(fitted, 'left out')).toEqual(['3 more in the text form of the brief']);
  });

  test('never loses what is no advice', () => {
    const fitted = fitCorner(corner(['a'], ['b']), 1);
    expect(fitted.sections.map(({ name }) => name)).toEqual(['gears', 'left out']);
  });

  test('whatever the texts are, nothing is made longer', () => {
    const texts = fc.array(fc.string({ maxLength: 300 }), { maxLength: 5 });
    fc.assert(
      fc.property(texts, texts, fc.integer({ min: 4, max: 20 }), (said, notes, room) => {
        const fitted = fitCorner(corner(said, notes), room);
        expect(lines(fitted, 'try first').length).toBeLessThanOrEqual(said.length);
        lines(fitted, 'notes').forEach((line, i) => {
          expect(line.length).toBeLessThanOrEqual(Math.max(notes[i]!.length, 132));
        });
      }),
    );
  });
});
