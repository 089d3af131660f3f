import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Brief } from '../../../src/report/brief/brief.ts';
import { briefHtml } from '../../../src/report/brief/brief-html.ts';
import { briefMarkdown } from '../../../src/report/brief/brief-markdown.ts';
import { briefText } from '../../../src/report/brief/brief-text.ts';

/** A brief with the same text in every place. */
function filled(text: string): Brief {
  return {
    title: text,
    subtitle: text,
    corners: [
      {
        title: text,
        subtitle: text,
        numbers: [{ name: text, value: text }],
        sections: [{ name: text, lines: [text, text] }],
      },
    ],
    cautions: [text],
  };
}

const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc
    .array(
      fc.constantFrom(
        ...['<script>', '</style>', '"', "'", '&lt;', '|', '`', '**', '[a](b)', '![', '\\'],
        ...[
          '\u001b[2J',
          '\u202e',
          '\n# ',
          '\r\n- ',
          '1. ',
          'www.x',
          'http://x',
          '~~',
          '<!--',
          ']]>',
        ],
      ),
      { maxLength: 6 },
    )
    .map((parts) => parts.join('')),
);

const count = (text: string, what: RegExp): number => [...text.matchAll(what)].length;
/** Backslash pairs taken out: what is left of these has a meaning. CommonMark 0.31, section 2.4. */
const meaning = (text: string): string => text.replace(/\\[!-/:-@[-`{-~]/g, '');

describe('text from outside', () => {
  test('adds no element, attribute or entity to the page', () => {
    const benign = briefHtml(filled('x'));
    fc.assert(
      fc.property(anyText, (text) => {
        const page = briefHtml(filled(text));
        for (const mark of [/</g, />/g, /"/g, /'/g])
          expect(count(page, mark)).toBe(count(benign, mark));
        for (const [entity] of page.matchAll(/&[^;]*;?/g))
          expect(entity).toMatch(/^&(amp|lt|gt|quot|#39);$/);
      }),
    );
    expect(briefHtml(filled('<b>&"'))).toContain('<h2>&lt;b&gt;&amp;&quot; ');
  });

  test('adds no markup and no line to the Markdown', () => {
    const benign = meaning(briefMarkdown(filled('x')));
    fc.assert(
      fc.property(anyText, (text) => {
        const page = meaning(briefMarkdown(filled(text)));
        for (const mark of [/[<>]/g, /[*_`]/g, /[[\]]/g, /\|/g, /[#~]/g, /&/g, /\n/g, /https?:\//g])
          expect(count(page, mark)).toBe(count(benign, mark));
      }),
    );
    expect(briefMarkdown(filled('- a'))).toContain('\n\\- a\n');
    expect(briefMarkdown(filled('1. a'))).toContain('\n1\\. a\n');
  });

  test('does not steer the terminal', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const page = briefText(filled(text));
        for (const line of page.split('\n')) {
          expect(line).not.toMatch(/\p{Cc}|\p{Cf}|\p{Zl}|\p{Zp}/u);
        }
      }),
    );
  });
});

test('no line of text is wider than a terminal of 80 columns', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 400 }), (text) => {
      const { corners, ...rest } = filled(text);
      const named = corners.map((corner) => ({
        ...corner,
        numbers: [{ name: 'level at the apex', value: text }],
        sections: [{ name: 'notes', lines: [text] }],
      }));
      for (const line of briefText({ ...rest, corners: named }).split('\n'))
        expect([...line].length).toBeLessThanOrEqual(80);
    }),
  );
});

test('the page loads nothing, runs nothing and prints on A4', () => {
  const page = briefHtml(filled('x'));
  expect(page).toMatch(/^<!doctype html>\n<html lang="en">/);
  expect(page).toContain("default-src 'none'");
  expect(page).toContain('@page { size: A4 portrait;');
  expect(page).not.toMatch(/<script|<link|<img|url\(|https?:/i);
});

test('long lines are broken between words, names stand in front of the first', () => {
  const value = Array.from({ length: 30 }, () => 'brake').join(' ');
  const brief = filled('x');
  const [corner] = brief.corners;
  const text = briefText({
    ...brief,
    corners: [{ ...corner!, numbers: [{ name: 'peak', value }], sections: [] }],
  });
  const rows = text.split('\n').slice(4, 7);
  // 62 columns hold ten words of five letters and their blanks, 59 characters
  expect(rows.map((row) => row.slice(0, 18).trimEnd())).toEqual(['peak', '', '']);
  expect(rows.map((row) => row.slice(18).split(' ').length)).toEqual([10, 10, 10]);
});
