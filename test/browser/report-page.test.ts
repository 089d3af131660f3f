import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { contrast } from './contrast.ts';
import { HOSTILE, type MadePages, makePages } from './made-pages.ts';
import { Browser, type Reader } from './open-page.ts';

let made: MadePages;
let browser: Browser;

beforeAll(async () => {
  made = makePages();
  browser = await Browser.start();
});
afterEach(() => browser.close());
afterAll(async () => {
  await browser.end();
  rmSync(made.folder, { recursive: true, force: true });
});

type PageName = 'practice' | 'weeks' | 'live' | 'hostile';
const PAGES: readonly PageName[] = ['practice', 'weeks', 'live', 'hostile'];

const READERS: readonly (readonly [string, Reader])[] = [
  ['a phone', { width: 360 }],
  ['a small phone in the dark', { width: 320, scheme: 'dark' }],
  ['a desk', { width: 1280 }],
  ['a desk in the dark', { width: 1280, scheme: 'dark' }],
  // A4 less its margins, at 96 pixels to the inch
  ['paper', { width: 703, media: 'print' }],
];

describe.each(READERS)('on %s', (_, reader) => {
  test.each(PAGES)('the page (%s) is whole, silent and no wider than it', async (name) => {
    const { page, complaints } = await browser.open(made[name], reader);
    expect(complaints).toEqual([]);
    const wide = await page.evaluate<string[]>(`
      [...document.querySelectorAll('body *')]
        .filter((one) => one.closest('.scroll') === null && one.closest('svg') === null)
        .filter((one) => one.getBoundingClientRect().right > innerWidth + 0.5)
        .map((one) => one.outerHTML.slice(0, 80))`);
    expect(wide).toEqual([]);
    const [scroll, own] = await page.evaluate<[number, number]>(
      '[document.documentElement.scrollWidth, innerWidth]',
    );
    expect(scroll).toBeLessThanOrEqual(own);
  });

  test.each(PAGES)('no words of a picture (%s) leave it or lie on others', async (name) => {
    const { page } = await browser.open(made[name], reader);
    const wrong = await page.evaluate<string[]>(`(() => {
      const wrong = [];
      for (const svg of document.querySelectorAll('svg')) {
        const frame = svg.getBoundingClientRect();
        const words = [...svg.querySelectorAll('text')].map((one) => [
          one.textContent, one.getBoundingClientRect()]);
        for (const [text, box] of words)
          if (box.left < frame.left - 0.5 || box.right > frame.right + 0.5 ||
              box.top < frame.top - 0.5 || box.bottom > frame.bottom + 0.5)
            wrong.push(svg.querySelector('title').textContent + ': ' + text + ' leaves it');
        words.forEach(([text, a], i) => words.slice(i + 1).forEach(([other, b]) => {
          const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
          const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
          if (across > 1 && down > 4) wrong.push(text + ' lies on ' + other);
        }));
      }
      return wrong;
    })()`);
    expect(wrong).toEqual([]);
  });

  test('everything written and drawn stands out', async () => {
    const { page } = await browser.open(made.practice, reader);
    const ground = await page.evaluate<string>('getComputedStyle(document.body).backgroundColor');
    const colours = (what: string, of: string): Promise<string[]> =>
      page.evaluate<string[]>(`[...new Set([...document.querySelectorAll(${JSON.stringify(what)})]
        .map((one) => getComputedStyle(one).${of}))]`);
    const written = [
      ...(await colours('h1, h2, p, td, th, li, summary, figcaption, caption, legend', 'color')),
      ...(await colours('.picture text', 'fill')),
    ];
    const drawn = [
      ...(await colours(
        '.target, .corridor, .mean, .own, .trend, .axis, .break, .picked',
        'stroke',
      )),
      ...(await colours('circle.dot', 'stroke')),
    ];
    // WCAG 2.2, success criteria 1.4.3 and 1.4.11
    for (const colour of written) expect(contrast(colour, ground)).toBeGreaterThanOrEqual(4.5);
    for (const colour of drawn.filter((one) => one !== 'none'))
      expect(contrast(colour, ground)).toBeGreaterThanOrEqual(3);
    expect(written.length).toBeGreaterThan(1);
    expect(drawn.length).toBeGreaterThan(2);
    const isDark = contrast(ground, 'rgb(0, 0, 0)') < 2;
    expect(isDark).toBe(reader.scheme === 'dark');
  });
});

test('paper is light even where the system is dark, and shows no buttons', async () => {
  const { page } = await browser.open(made.practice, {
    width: 703,
    scheme: 'dark',
    media: 'print',
  });
  const ground = await page.evaluate<string>('getComputedStyle(document.body).backgroundColor');
  expect(contrast(ground, 'rgb(255, 255, 255)')).toBe(1);
  expect(await page.locator('fieldset.pick').first().isVisible()).toBe(false);
  expect(await page.locator('svg').first().isVisible()).toBe(true);
  const paper = await page.pdf({ preferCSSPageSize: true });
  expect(paper.subarray(0, 5).toString()).toBe('%PDF-');
});

describe('who does not see the pictures', () => {
  test.each(PAGES)('hears what they say (%s)', async (name) => {
    const { page } = await browser.open(made[name], { width: 360 });
    const pictures = page.getByRole('img');
    const count = await page.locator('svg').count();
    expect(count).toBeGreaterThanOrEqual(name === 'weeks' ? 2 : 3);
    expect(await pictures.count()).toBe(count);
    const snapshot = await page.locator('body').ariaSnapshot();
    const named = [...snapshot.matchAll(/- '?img "(.*)"/g)].map(([, spoken]) => spoken!);
    expect(named.length).toBe(count);
    // the title, and after it the reading
    for (const spoken of named) expect(spoken.length).toBeGreaterThan(50);
  });

  test('finds the numbers of each in a table', async () => {
    const { page } = await browser.open(made.practice, { width: 360 });
    const figure = page.locator('figure').first();
    expect(await figure.getByRole('table').isVisible()).toBe(false);
    await figure.getByText('Numbers').click();
    expect(await figure.getByRole('table').isVisible()).toBe(true);
    expect(await figure.getByRole('row').count()).toBeGreaterThan(20);
  });
});

/** The last block, as an expression on the page. */
const BLOCK = "[...document.querySelectorAll('section.block')].at(-1)";

describe('a rep can be picked and compared', () => {
  test.each(['practice', 'live'] as const)('by touch (%s)', async (name) => {
    const { page, complaints } = await browser.open(made[name], { width: 360 });
    const block = page.locator('section.block').last();
    const chips = (group: number) => block.locator('fieldset.pick').nth(group).getByRole('radio');
    const shown = (): Promise<string[]> =>
      page.evaluate(`[...${BLOCK}.querySelectorAll('.picked')]
        .filter((one) => getComputedStyle(one).display !== 'none')
        .map((one) => one.getAttribute('class').split(' ').at(-1))`);
    expect(await shown()).toEqual([]);
    expect(await block.locator('.compare').isVisible()).toBe(false);
    const [first, third] = [chips(0).nth(1), chips(1).nth(3)];
    const nameOf = async (chip: typeof first): Promise<string> =>
      ((await chip.getAttribute('aria-label')) ?? '').replace('rep ', '');
    const [one, other] = [await nameOf(first), await nameOf(third)];
    await first.click();
    await third.click();
    const pictures = (await block.locator('svg .picked').count()) / ((await chips(0).count()) - 1);
    expect((await shown()).toSorted()).toEqual(
      Array.from({ length: pictures }, () => [`r${one}`, `r${other}`])
        .flat()
        .toSorted(),
    );
    const heads = block.locator('.compare th[scope=col]:visible');
    expect(await heads.allInnerTexts()).toEqual(['rep', one, other]);
    const dashes = await page.evaluate(`['${one}', '${other}'].map((number) =>
      getComputedStyle(${BLOCK}.querySelector('.picked.r' + number)).strokeDasharray)`);
    expect(dashes).toEqual(['none', '2px, 2.5px']);
    expect(complaints).toEqual([]);
  });

  test('by the keyboard', async () => {
    const { page } = await browser.open(made.practice, { width: 1280 });
    const chips = page.locator('fieldset.pick').first().getByRole('radio');
    await chips.first().focus();
    await page.keyboard.press('ArrowRight');
    expect(await chips.nth(1).isChecked()).toBe(true);
    expect(await page.locator('.compare').first().isVisible()).toBe(true);
    const outline = await page.evaluate(
      `getComputedStyle(document.querySelector('.chips input:focus + span')).outlineStyle`,
    );
    expect(outline).toBe('solid');
  });

  test('the buttons are large enough for a finger (WCAG 2.2, 2.5.8)', async () => {
    const { page } = await browser.open(made.practice, { width: 360 });
    const sizes = await page.evaluate<number[][]>(`[...document.querySelectorAll('.chips label')]
      .map((one) => one.getBoundingClientRect()).map(({ width, height }) => [width, height])`);
    for (const [width, height] of sizes) expect(Math.min(width!, height!)).toBeGreaterThan(24);
  });
});

describe('hostile words', () => {
  test('stay words on the page', async () => {
    const { page, complaints } = await browser.open(made.hostile, { width: 360 });
    expect(complaints).toEqual([]);
    const counts = await page.evaluate<Record<string, number>>(`Object.fromEntries(
      ['script', 'img', 'iframe', 'link', 'style', 'bdi script', '[onerror]', '[onload]', '[src]']
        .map((what) => [what, document.querySelectorAll(what).length]))`);
    expect(counts).toEqual({
      ...{ script: 0, img: 0, iframe: 0, link: 0, 'bdi script': 0 },
      ...{ '[onerror]': 0, '[onload]': 0, '[src]': 0, style: 1 },
    });
    const text = await page.locator('main').textContent();
    // driver, footwear, target, note
    expect(text!.split('<script>alert(1)</script>').length).toBeGreaterThan(5);
    expect(await page.locator('.notes').textContent()).toContain(HOSTILE);
  });

  test('stay words in pictures of their own', async () => {
    const files = readdirSync(made.pictures);
    expect(files.length).toBeGreaterThanOrEqual(4);
    for (const file of files) {
      const { page, complaints } = await browser.open(join(made.pictures, file), { width: 500 });
      expect(complaints).toEqual([]);
      const root = await page.evaluate<[string, number, number, string]>(`[
        document.documentElement.nodeName,
        document.getElementsByTagName('parsererror').length,
        document.getElementsByTagName('script').length,
        document.querySelector('title').textContent]`);
      expect(root.slice(0, 3)).toEqual(['svg', 0, 0]);
      expect(root[3].length).toBeGreaterThan(5);
      await browser.close();
    }
  });

  test('that a script on the page would do nothing', async () => {
    const { page } = await browser.open(made.practice, { width: 360 });
    await page.evaluate(`(() => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "taken"';
      document.body.append(script);
    })()`);
    expect(await page.title()).toMatch(/^Practice /);
  });
});
