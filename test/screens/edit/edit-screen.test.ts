import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { editedCar, fullScaleBar } from '../../../src/commands/edited-car.ts';
import { DEFAULT_INK } from '../../../src/screens/cell-grid.ts';
import { EDIT_FOOTER, EDIT_HELP, EDIT_KEYS } from '../../../src/screens/edit/edit-keys.ts';
import { editScreen } from '../../../src/screens/edit/edit-screen.ts';
import type { EditView } from '../../../src/screens/edit/edit-view.ts';
import { toText } from '../../../src/screens/grid-text.ts';
import { COLOUR_THEME, MONOCHROME_THEME } from '../../../src/screens/theme.ts';
import { targetFileText } from '../../../src/target/derive/target-file-text.ts';
import type { EditMessage } from '../../../src/target/edit/edit-message.ts';
import { type EditModel, editedText, startEdit } from '../../../src/target/edit/edit-model.ts';
import { updateEdit } from '../../../src/target/edit/update-edit.ts';
import { bundledZone } from '../../live-car/bundled-zone.ts';

const LOOK = { theme: COLOUR_THEME, unicode: true };
const { derived } = bundledZone('gt', 'kiln-hairpin', 'wet');
const WET = targetFileText(derived, 'Squeeze.');
const HAIRPIN = readFileSync(
  new URL('../../../profiles/targets/hairpin.yaml', import.meta.url),
  'utf8',
);

function modelOf(text: string, ...messages: readonly EditMessage[]): EditModel {
  const now = editedText(text, 'own.yaml');
  if (typeof now === 'string') throw new Error(now);
  const start = startEdit(now, 'own.yaml', true);
  return messages.reduce((model, message) => updateEdit(model, message)[0], start);
}

const CHOOSE: EditMessage = { kind: 'choose', by: 1 };
const plain = (model: EditModel, more: Partial<EditView> = {}): EditView => ({
  model,
  path: 'own.yaml',
  fullScaleBar: null,
  car: null,
  units: 'metric',
  ...more,
});
const withCar = (model: EditModel): EditView =>
  plain(model, {
    fullScaleBar: fullScaleBar(model.now.target, derived),
    car: editedCar(derived, model.now.target),
  });

describe.each([
  { cols: 80, rows: 24 },
  { cols: 160, rows: 48 },
])('at $cols x $rows', (size) => {
  const golden = (name: string) => `../golden/edit-${name}-${size.cols}x${size.rows}.txt`;
  const expectGolden = (view: EditView, name: string, look = LOOK) =>
    expect(`${toText(editScreen(view, size, look))}\n`).toMatchFileSnapshot(golden(name));

  test('a target over time without a car', async () => {
    await expectGolden(plain(modelOf(HAIRPIN, CHOOSE)), 'time');
  });

  test('a derived target with its car, one knot lifted', async () => {
    const up = Array.from({ length: 4 }, (): EditMessage => ({ kind: 'level', by: 1 }));
    const model = modelOf(WET, CHOOSE, CHOOSE, ...up, { kind: 'save' });
    await expectGolden(withCar(model), 'car');
  });

  test('a refusal, a question and help', async () => {
    const refusal = modelOf(HAIRPIN, CHOOSE, CHOOSE, { kind: 'level', by: 1 });
    await expectGolden(plain(refusal), 'refused');
    const asking = modelOf(HAIRPIN, { kind: 'level', by: 1 }, { kind: 'quit' });
    await expectGolden(plain(asking), 'asking');
    await expectGolden(plain(modelOf(HAIRPIN, { kind: 'help' })), 'help');
  });

  test('without colour and without UTF-8', async () => {
    const look = { theme: MONOCHROME_THEME, unicode: false };
    const view = withCar(modelOf(WET));
    await expectGolden(view, 'ascii', look);
    const grid = editScreen(view, size, look);
    expect(grid.ink.every((ink) => ink === DEFAULT_INK)).toBe(true);
    expect(Math.max(...grid.code)).toBeLessThan(0x7f);
    expect(toText(grid)).not.toContain('?h');
  });

  test('the chosen point has the colour of the driver, the curve that of the target', () => {
    const grid = editScreen(plain(modelOf(HAIRPIN, CHOOSE)), size, LOOK);
    const inks = (character: string) =>
      grid.ink.filter((_, i) => i > 2 * size.cols && grid.code[i] === character.codePointAt(0));
    expect([...inks('●')]).toEqual([COLOUR_THEME.driver.ink]);
    expect(inks('○').length).toBeGreaterThan(1);
  });
});

test('pressures are in the units that are asked for', () => {
  const view = { ...withCar(modelOf(WET)), fullScaleBar: 100 };
  const metric = toText(editScreen(view, { cols: 80, rows: 24 }, LOOK));
  const imperial = toText(editScreen({ ...view, units: 'imperial' }, { cols: 80, rows: 24 }, LOOK));
  // 39.3 % of 100 bar; 1 bar is 14.5038 psi (NIST SP 811).
  expect(metric).toMatch(/peak +39\.3 % {2}39\.3 bar/);
  expect(imperial).toMatch(/peak +39\.3 % {2}570 psi/);
});

test('every key of the footer does something', () => {
  for (const key of ['tab', '+', '-', 'a', 'd', 'u', 's', '?', 'q']) {
    expect(EDIT_KEYS.has(key)).toBe(true);
    expect(EDIT_FOOTER).toMatch(new RegExp(`(^| )${key.replace(/[?+]/, '\\$&')} `));
  }
  expect(EDIT_FOOTER.length).toBeLessThanOrEqual(79);
  expect(EDIT_HELP.length).toBeLessThanOrEqual(22);
});
