import { describe, expect, test } from 'vitest';
import { toText } from '../../src/screens/grid-text.ts';
import { type PickerItem, pickerScreen } from '../../src/screens/picker-screen.ts';
import { COLOUR_THEME } from '../../src/screens/theme.ts';

const LOOK = { theme: COLOUR_THEME, unicode: true };
const ITEMS: readonly PickerItem[] = [
  { name: 'Kiln hairpin', cornerType: 'hairpin', daysSince: 0, reps: 38 },
  { name: 'Orchard', cornerType: 'fast sweeper', daysSince: 1, reps: 1 },
  { name: 'Mill', cornerType: 'decreasing radius', daysSince: 12, reps: 120 },
  { name: 'Quarry', cornerType: 'double apex', daysSince: null, reps: 0 },
];
const MANY = Array.from({ length: 40 }, (_, index) => ({
  ...ITEMS[0]!,
  name: `Corner ${index + 1}`,
}));

describe.each([
  { cols: 80, rows: 24 },
  { cols: 160, rows: 48 },
])('at $cols x $rows', (size) => {
  const golden = (name: string) => `golden/${name}-${size.cols}x${size.rows}.txt`;

  test('a short list with a message', async () => {
    const options = {
      ...LOOK,
      source: 'virtual driver, club',
      message: 'No pedals found: this is the virtual rig.',
    };
    const text = toText(pickerScreen(ITEMS, 1, size, options));
    await expect(`${text}\n`).toMatchFileSnapshot(golden('picker'));
  });

  test('help', async () => {
    const text = toText(pickerScreen(ITEMS, 1, size, { ...LOOK, help: true }));
    await expect(`${text}\n`).toMatchFileSnapshot(golden('picker-help'));
  });

  test.each([0, 20, 39])('item %i of a long list is in sight and marked', (selected) => {
    const text = toText(pickerScreen(MANY, selected, size, LOOK));
    expect(text).toContain(`▶ Corner ${selected + 1} `);
  });
});

test('a long message takes two rows', () => {
  const message =
    'libusb-1.0-0 is missing: the virtual driver drives. Install it with `apt-get install libusb-1.0-0` and start again.';
  const lines = toText(pickerScreen(ITEMS, 0, { cols: 80, rows: 24 }, { ...LOOK, message })).split(
    '\n',
  );
  expect(`${lines[1]?.trim()} ${lines[2]?.trim()}`).toBe(message);
  expect(lines[3]).toMatch(/^ {3}target +corner/);
});

test('an empty list says so', () => {
  expect(toText(pickerScreen([], 0, { cols: 80, rows: 24 }, LOOK))).toContain('no targets found');
});
