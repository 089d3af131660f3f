import { describe, expect, test } from 'vitest';
import {
  DISPLAY_PARTS,
  type DisplaySettings,
  PLAIN_DISPLAY,
  turned,
} from '../../src/drill/display/display-settings.ts';
import { displayText, readDisplayText } from '../../src/drill/display/display-text.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import { type Fed, feed, fresh, press, RAMP, type Script, START_S } from './drill-rig.ts';

const good: Script = { brake: (t) => RAMP.level.at(t - START_S) };
const until = (toS: number, script = good): Fed => feed(fresh(), script, { fromS: 0, toS });

const OTHER: DisplaySettings = {
  layout: 'stacked',
  previewS: 1.2,
  zoom: 2,
  corridor: false,
  theme: 'light',
  picture: 'gg',
};

describe('display settings', () => {
  test('each key takes its setting one on, and round', () => {
    const fed = press(until(2), 'layout', 'preview', 'zoom', 'corridor', 'theme');
    expect(viewOf(fed.model).display).toEqual({
      layout: 'stacked',
      previewS: 2,
      zoom: 2,
      corridor: false,
      theme: 'colour',
      picture: 'usual',
    });
    for (const part of DISPLAY_PARTS) {
      let settings = turned(PLAIN_DISPLAY, part);
      let turns = 1;
      for (
        ;
        settings[part === 'preview' ? 'previewS' : part] !==
        PLAIN_DISPLAY[part === 'preview' ? 'previewS' : part];
        turns++
      )
        settings = turned(settings, part);
      expect(settings).toEqual(PLAIN_DISPLAY);
      expect(turns).toBeGreaterThan(1);
    }
  });

  test('every change goes to the file of the driver', () => {
    const { effects } = press(until(2), 'zoom', 'zoom');
    expect(effects).toMatchObject([
      { kind: 'display', settings: { zoom: 2 } },
      { kind: 'display', settings: { zoom: 4 } },
    ]);
  });

  test('can be changed while a rep is driven, which goes on', () => {
    const fed = press(until(START_S + 0.5), 'layout');
    expect(viewOf(fed.model)).toMatchObject({ phase: 'braking', display: { layout: 'stacked' } });
  });
});

describe('the list of settings', () => {
  test('makes the drill wait, and it goes on when the list is closed', () => {
    const open = press(until(2), 'display');
    expect(viewOf(open.model)).toMatchObject({ phase: 'paused', menuRow: 0 });
    expect(viewOf(open.model).message).toBe('The drill waits: d closes the list.');
    const later = feed(open.model, good, { fromS: 2, toS: 9 });
    expect(viewOf(later.model)).toMatchObject({ phase: 'paused', menuRow: 0 });
    for (const key of ['display', 'close', 'pause', 'finish'] as const)
      expect(viewOf(press(later, key).model)).toMatchObject({ phase: 'arming', menuRow: null });
  });

  test('of a paused drill leaves it paused, and that of a summary the summary', () => {
    expect(viewOf(press(until(2), 'pause', 'display', 'display').model).phase).toBe('paused');
    const summed = press(until(START_S + 3), 'finish', 'display');
    expect(viewOf(summed.model)).toMatchObject({ phase: 'summary', menuRow: 0 });
    expect(viewOf(press(summed, 'finish').model)).toMatchObject({
      phase: 'summary',
      menuRow: null,
    });
    expect(press(summed, 'finish').effects.map(({ kind }) => kind)).not.toContain('end');
  });

  test('up and down go round, next changes what is chosen', () => {
    const open = press(until(2), 'display');
    expect(viewOf(press(open, 'up').model).menuRow).toBe(5);
    expect(viewOf(press(open, 'up', 'down').model).menuRow).toBe(0);
    const changed = press(open, 'down', 'down', 'next', 'choose');
    expect(viewOf(changed.model)).toMatchObject({ menuRow: 2, display: { zoom: 4 } });
  });

  test('does not open over a rep, and no clutch goes on under it', () => {
    expect(viewOf(press(until(START_S + 0.5), 'display').model).menuRow).toBeNull();
    const open = press(until(2), 'display');
    const held = feed(open.model, { ...good, clutch: () => 1 }, { fromS: 2, toS: 6 });
    expect(viewOf(held.model)).toMatchObject({ phase: 'paused', menuRow: 0 });
  });

  test('a note is neither typed nor lost in it', () => {
    const open = press(until(START_S + 3), 'display', 'note');
    expect(viewOf(open.model)).toMatchObject({ note: null, menuRow: 0 });
    expect(open.effects.at(-1)).toEqual({ kind: 'note', rep: 1 });
  });
});

describe('the text of the settings', () => {
  test('comes back as it was', () => {
    expect(readDisplayText(displayText('Kim', OTHER), 'Kim')).toEqual(OTHER);
  });

  test.each([
    ['nothing', ''],
    ['half of it', displayText('Kim', OTHER).slice(0, 60)],
    ['another driver', displayText('Lou', OTHER)],
    ['a list', '[1, 2]'],
    ['null', 'null'],
    ['a number', '7'],
    ['another format', displayText('Kim', OTHER).replace('ebbline display', 'ebbline rig')],
  ])('%s is as nobody has set it', (_, text) => {
    expect(readDisplayText(text, 'Kim')).toEqual(PLAIN_DISPLAY);
  });

  test('one value that is not possible leaves the others as they are', () => {
    const text = displayText('Kim', OTHER).replace('"zoom": 2', '"zoom": -3e300');
    expect(readDisplayText(text, 'Kim')).toEqual({ ...OTHER, zoom: 1 });
    const odd = displayText('Kim', OTHER).replace('"light"', '{"toString": 1}');
    expect(readDisplayText(odd, 'Kim')).toEqual({ ...OTHER, theme: null });
  });
});
