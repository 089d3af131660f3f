import { PassThrough, Writable } from 'node:stream';
import { afterEach, describe, expect, test } from 'vitest';
import { type BlessedPicture, openPicture } from '../../src/screens/blessed-picture.ts';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { drillScreen } from '../../src/screens/drill-screen.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { COLOUR_THEME, MONOCHROME_THEME } from '../../src/screens/theme.ts';
import { writeText } from '../../src/screens/write-text.ts';
import { TerminalText } from '../bench/terminal-text.ts';
import { BRAKING, DRILL_VIEWS, ownTrace } from './sample-views.ts';

const SIZE = { cols: 80, rows: 24 };
const REP_FRAMES = 150;
const BEGIN = '\x1b[?2026h';
const END = '\x1b[?2026l';

/** What a terminal would get, one entry per write. */
class Output extends Writable {
  readonly isTTY = true;
  readonly columns = SIZE.cols;
  readonly rows = SIZE.rows;
  readonly writes: string[] = [];

  override _write(chunk: Buffer, _: string, done: () => void): void {
    this.writes.push(chunk.toString());
    done();
  }
}

let picture: BlessedPicture | null = null;
afterEach(() => {
  picture?.destroy();
  picture = null;
});

function open(unicode = true): { picture: BlessedPicture; output: Output; input: PassThrough } {
  const output = new Output();
  const input = Object.assign(new PassThrough(), { isTTY: true, setRawMode: () => {} });
  picture = openPicture({ env: {}, unicode, pointer: false, output, input });
  return { picture, output, input };
}

/** The views of a rep and what stands around it, one frame each. */
function paintAll(shown: BlessedPicture, look = { theme: COLOUR_THEME, unicode: true }): void {
  for (const view of Object.values(DRILL_VIEWS)) shown.paint(drillScreen(view, SIZE, look));
  for (let frame = 0; frame < REP_FRAMES; frame++) {
    const nowS = frame / 60;
    shown.paint(drillScreen({ ...BRAKING, nowS, own: ownTrace(nowS) }, SIZE, look));
  }
}

describe('frames', () => {
  test('are one write each, shown whole', () => {
    const { picture: shown, output } = open();
    shown.paint(drillScreen(BRAKING, SIZE, { theme: COLOUR_THEME, unicode: true }));
    const before = output.writes.length;
    paintAll(shown);
    const frames = output.writes.slice(before);
    expect(frames.length).toBeGreaterThan(REP_FRAMES / 10);
    expect(frames.length).toBeLessThanOrEqual(Object.keys(DRILL_VIEWS).length + REP_FRAMES);
    for (const frame of frames) {
      expect(frame.startsWith(BEGIN)).toBe(true);
      expect(frame.endsWith(END)).toBe(true);
    }
  });

  // ECMA-48: ED is CSI ... J, EL is CSI ... K.
  test('after the first never clear the screen or a line', () => {
    const { picture: shown, output } = open();
    shown.paint(drillScreen(BRAKING, SIZE, { theme: COLOUR_THEME, unicode: true }));
    const before = output.writes.length;
    paintAll(shown);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control sequences start with one
    expect(output.writes.slice(before).join('')).not.toMatch(/\x1b\[[0-9;]*[JK]/);
  });

  test('that change nothing draw nothing', () => {
    const { picture: shown, output } = open();
    const grid = drillScreen(BRAKING, SIZE, { theme: COLOUR_THEME, unicode: true });
    shown.paint(grid);
    const before = output.writes.length;
    shown.paint(grid);
    shown.paint(drillScreen(BRAKING, SIZE, { theme: COLOUR_THEME, unicode: true }));
    expect(output.writes.length).toBe(before);
  });

  test('leave on a terminal what they show, one after the other and to and fro', () => {
    const { picture: shown, output } = open();
    const terminal = new TerminalText(SIZE);
    const views = Object.values(DRILL_VIEWS);
    for (const view of [...views, ...views.toReversed(), ...views]) {
      const grid = drillScreen(view, shown.canvas(), { theme: COLOUR_THEME, unicode: true });
      shown.paint(grid);
      for (const text of output.writes.splice(0)) terminal.write(text);
      expect(terminal.lines.map((line) => line.trimEnd()).join('\n')).toBe(toText(grid));
    }
  });

  test('of another size are drawn on a terminal that was cleared', () => {
    const { picture: shown, output } = open();
    const terminal = new TerminalText(SIZE);
    shown.paint(drillScreen(BRAKING, SIZE, { theme: COLOUR_THEME, unicode: true }));
    const small = createGrid({ cols: 10, rows: 2 });
    writeText(small, 0, 1, 'small', COLOUR_THEME.text);
    shown.paint(small);
    for (const text of output.writes) terminal.write(text);
    expect(terminal.lines.join('').trim()).toBe('small');
  });

  test('are drawn whole again once the screen was forgotten', () => {
    const { picture: shown, output } = open();
    const grid = drillScreen(BRAKING, SIZE, { theme: COLOUR_THEME, unicode: true });
    shown.paint(grid);
    shown.forget();
    shown.paint(grid);
    expect(output.writes.at(-1)).toContain('Kiln hairpin');
  });

  test('without UTF-8 are bytes below 127', () => {
    const { picture: shown, output } = open(false);
    paintAll(shown, { theme: COLOUR_THEME, unicode: false });
    expect(output.writes.join('')).not.toMatch(/[\u0080-\uffff]/);
  });

  test('without colour have none', () => {
    const { picture: shown, output } = open();
    paintAll(shown, { theme: MONOCHROME_THEME, unicode: true });
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control sequences start with one
    expect(output.writes.join('')).not.toMatch(/\x1b\[[0-9;]*(38|48|3[0-7]|4[0-7]);?[0-9;]*m/);
  });
});

test('keys come by the library’s names', async () => {
  const { picture: shown, input } = open();
  const keys: string[] = [];
  shown.keys$.subscribe((key) => keys.push(key));
  input.write('q \x1b[A\r\x03?');
  await new Promise((resolve) => setTimeout(resolve, 0));
  expect(keys).toEqual(['q', 'space', 'up', 'enter', 'return', 'C-c', '?']);
});
