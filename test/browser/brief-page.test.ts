import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CAUTIONS } from '../../src/drill/cautions.ts';
import type { Brief, BriefCorner } from '../../src/report/brief/brief.ts';
import { briefHtml } from '../../src/report/brief/brief-html.ts';

const folder = mkdtempSync(join(tmpdir(), 'brief-page-'));
const LONG = 'The second patch over the drain unloads the front just when the wheel goes in. ';

/** A corner with all that a brief says of one, and notes and advice as long as they may be. */
const CORNER: BriefCorner = {
  title: 'Kiln hairpin',
  subtitle: 'decreasing-radius, qualifying, from 245 km/h',
  numbers: [
    { name: 'brake point', value: '172.2 m before turn-in' },
    { name: 'peak', value: '1126 N (100 % of full scale)' },
    { name: 'start of release', value: '17.0 m after turn-in' },
    { name: 'level at the apex', value: '12 %' },
    { name: 'slowest speed', value: '163 km/h' },
  ],
  sections: [
    {
      name: 'gears',
      lines: ['qualifying', 'race'].map(
        (variant) =>
          `${variant}: gear 5 to 2; last downshift 3 to 2, 146.4 m after turn-in, is NOT safe by the model (13401 rpm): no place is safe`,
      ),
    },
    {
      name: 'bumps',
      lines: ['166.0', '142.0'].map(
        (m) => `${m} m before turn-in: rear margin -124 %, ease 100 % over it`,
      ),
    },
    {
      name: 'consistency',
      lines: [
        'hidden reps: release error 11.4 % (median of 113); spread 11.5 % of full scale',
        'first of the day: release error 12.4 % (median of 15)',
        '2026-11-02 to 2026-11-27; virtual driver, club, virtual, left foot, late stint',
      ],
    },
    { name: 'try first', lines: [LONG.repeat(2), LONG.repeat(5), LONG] },
    { name: 'notes', lines: [LONG.repeat(6), LONG.repeat(6), LONG.repeat(6), 'and 9 older'] },
  ],
};

function brief(corners: number): Brief {
  return {
    title: 'Brief: Sallow Fen test day',
    subtitle:
      '2027-04-10, in 134 days; qualifying, Quillmark P. Made on 2026-11-27. Errors and levels in % of full scale; places along the line.',
    corners: Array.from({ length: corners }, () => CORNER),
    cautions: CAUTIONS,
  };
}

let browser: Browser;
beforeAll(async () => {
  browser = await chromium.launch({
    executablePath: process.env.EBBLINE_CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--disable-background-networking'],
  });
}, 60_000);
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true });
});

/** Pages of the PDF that the browser prints: objects of the type Page (ISO 32000-1, 7.7.3.3). */
async function printedPages(corners: number): Promise<number> {
  const file = join(folder, `${corners}.html`);
  writeFileSync(file, briefHtml(brief(corners)));
  const page = await browser.newPage();
  await page.goto(`file://${file}`);
  const pdf = await page.pdf({ preferCSSPageSize: true });
  await page.close();
  return pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;
}

describe('on A4', () => {
  test.each([
    [1, 1],
    [5, 1],
    [8, 1],
    [9, 2],
    [16, 2],
  ])(
    '%i corners take %i pages, however long their texts are',
    async (corners, pages) => {
      expect(await printedPages(corners)).toBe(pages);
    },
    60_000,
  );
});
