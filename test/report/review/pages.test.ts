import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pictureFile } from '../../../src/report/picture/picture.ts';
import { practicePage, practicePictures } from '../../../src/report/review/practice-page.ts';
import { weeksPage, weeksPictures } from '../../../src/report/review/weeks-page.ts';
import { anyText, HOSTILE } from '../hostile-text.ts';
import { sampleReview, sampleSeries } from '../sample-review.ts';

const SAMPLE = sampleReview('x');

const weeksOf = (text: string): Parameters<typeof weeksPage>[0] => ({
  today: text,
  weeks: 12,
  series: [sampleSeries(text)],
  notes: [{ at: text, about: text, text }],
  cautions: [text],
});

/** Every tag with its attributes; text between them left out. */
const tags = (page: string): string[] =>
  [...page.replace(/<style>.*?<\/style>/gs, '').matchAll(/<[^>]*>/g)].map(([tag]) => tag);

/** The same without what attributes hold. */
const shape = (page: string): string =>
  tags(page)
    .map((tag) => tag.replace(/="[^"]*"/g, '=""'))
    .join('');

const MOST_WEEKS_RUNS = 20;

describe('text from outside', () => {
  const benign = shape(practicePage(SAMPLE));
  const benignWeeks = shape(weeksPage(weeksOf('x')));

  test('changes no tag of the page of a practice, wherever it stands', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        // a note without a text says something of its own
        fc.pre(text !== '');
        // the rows of the weeks are the costly part and hold the same words
        const review = { ...sampleReview(text), series: SAMPLE.series };
        // the difference would be as long as the page
        expect(shape(practicePage(review)) === benign).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  test('changes no tag of the page of some weeks', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        fc.pre(text !== '');
        expect(shape(weeksPage(weeksOf(text))) === benignWeeks).toBe(true);
      }),
      { numRuns: MOST_WEEKS_RUNS },
    );
  });

  test('brings no element, entity or character that a parser takes for something else', () => {
    const page = practicePage(sampleReview(HOSTILE.join('')));
    expect(page).not.toMatch(/<script|<img|onerror="|onload="/i);
    expect(page).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    for (const [entity] of page.matchAll(/&[^;]{0,8};?/g))
      expect(entity).toMatch(/^&(amp|lt|gt|quot|#39);$/);
    expect(page.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\uFFFE\uFFFF]/u);
  });

  test('leaves pictures of their own well-formed', () => {
    for (const picture of practicePictures(sampleReview(HOSTILE.join(''))))
      expect(unclosed(pictureFile(picture))).toEqual([]);
  });
});

/** Elements that are not closed where they should be: XML 1.0, section 2.1, constraint of matching tags. */
function unclosed(xml: string): string[] {
  const open: string[] = [];
  const wrong: string[] = [];
  for (const [, end, name] of xml.matchAll(/<(\/?)([a-z]+)[^>]*>/g)) {
    if (end === '') open.push(name!);
    else if (open.pop() !== name) wrong.push(name!);
  }
  return [...open, ...wrong];
}

describe('a page', () => {
  const page = practicePage(SAMPLE);

  test('loads nothing and runs nothing', () => {
    expect(page).toContain(
      `content="default-src &#39;none&#39;; style-src &#39;unsafe-inline&#39;;`,
    );
    expect(page.replaceAll('xmlns="http://www.w3.org/2000/svg"', '')).not.toMatch(
      /https?:|url\(|@import|src=|<script|<link|\bon[a-z]+=/,
    );
  });

  test('names every picture and says in one line what is to be seen', () => {
    const ids = [...page.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const named = [...page.matchAll(/<svg [^>]*role="img" aria-labelledby="([^" ]*) ([^" ]*)"/g)];
    expect(named.length).toBe(practicePictures(SAMPLE).length);
    expect(named.length).toBe(tags(page).filter((tag) => tag.startsWith('<svg')).length);
    for (const [, title, reading] of named) {
      expect(page).toMatch(new RegExp(`<title id="${title}">[^<]{5,}</title>`));
      expect(page).toMatch(new RegExp(`<desc id="${reading}">[^<]{15,}</desc>`));
    }
    for (const href of page.matchAll(/href="#([^"]*)"/g)) expect(ids).toContain(href[1]);
  });

  test('holds the numbers of every picture as a table', () => {
    const figures = page.split('<figure>').slice(1);
    expect(figures.length).toBe(practicePictures(SAMPLE).length);
    for (const figure of figures)
      expect(figure).toMatch(/<details><summary>Numbers<\/summary>.*<table>.*<\/table>/s);
  });

  test('has a rule for every rep that can be picked', () => {
    const inputs = [...page.matchAll(/<input [^>]*class="((?:one|other)\d+)"/g)];
    expect(inputs.length).toBe(20);
    for (const [, name] of inputs) expect(page).toContain(`.block:has(.${name}:checked)`);
    for (let n = 1; n <= 10; n++) {
      // in the overlay, and against the wheel
      expect([...page.matchAll(new RegExp(`class="line picked r${n}"`, 'g'))].length).toBe(2);
      expect(page).toMatch(new RegExp(`<td class="cell c${n}">${60 + n}</td>`));
    }
  });

  test('says first what to change', () => {
    const body = page.slice(page.indexOf('<section'));
    expect(body.indexOf('Let the pedal rise more slowly')).toBeLessThan(body.indexOf('<svg'));
  });

  test('tells what each sentence is about', () => {
    expect(page).toMatch(
      /<p>Release error: hidden (or shown, no clear difference|reps \d\.\d % rms (worse|better) than shown) \([+-]?\d/,
    );
    expect(page).toMatch(
      /<p>Against the others: first rep (within what reps differ|\d+ points (above|below) the rest)/,
    );
  });

  test('has every note with its place, and says of a mark that its words are missing', () => {
    const review = {
      ...SAMPLE,
      notes: [
        { at: '2026-11-25 18:03', about: 'rep 6', text: 'ease over the drain' },
        { at: '2026-11-25 18:09', about: '', text: '' },
      ],
    };
    const notes = practicePage(review)
      .split('id="notes"')[1]!
      .replace(/<[^>]*>/g, '');
    expect(notes).toContain('2026-11-25 18:03, rep 6: ease over the drain');
    expect(notes).toContain('2026-11-25 18:09: marked, without words yet');
  });

  test('says why a block is not drawn', () => {
    expect(page).toContain('No pictures: x.');
  });

  test('of weeks has its pictures, too', () => {
    const weeks = weeksOf('x');
    expect(weeksPictures(weeks).map(({ id }) => id)).toEqual(['series-1-weeks', 'series-1-limits']);
    expect(weeksPage(weeks)).toContain('Spread along the target: x.');
  });
});
