import { describe, expect, test } from 'vitest';
import { parseDescriptor } from '../../../src/input/hid/parse-descriptor.ts';
import { checkRig } from '../../../src/input/rig/check-rig.ts';
import { virtualPedals, virtualWheel } from '../../../src/input/virtual/virtual-devices.ts';
import { virtualRig } from '../../../src/input/virtual/virtual-rig.ts';

const usage = (page: number, id: number) => ({ usagePage: page, usageId: id });
const SIMULATION = 0x02;
const BUTTON = 0x09;

describe.each([12, 16] as const)('pedals with %i-bit axes', (bits) => {
  const parsed = parseDescriptor(virtualPedals(bits).descriptor!);

  test('describe accelerator, brake and clutch by the HID Usage Tables', () => {
    expect(parsed.fields).toMatchObject(
      [0xc4, 0xc5, 0xc6].map((id, i) => ({
        ...usage(SIMULATION, id),
        bitOffset: i * bits,
        bitSize: bits,
        logicalMin: 0,
        logicalMax: 2 ** bits - 1,
      })),
    );
    expect(parsed.warnings).toEqual([]);
    expect(parsed.reportBytes.get(0)).toBe(bits === 16 ? 6 : 5);
  });

  test('are assigned where their descriptor puts them', () => {
    const rig = virtualRig(bits);
    checkRig(rig, [virtualPedals(bits), virtualWheel()]);
    const named = { throttle: 0xc4, brake: 0xc5, clutch: 0xc6 } as const;
    for (const [role, id] of Object.entries(named)) {
      const field = rig.axes.find((axis) => axis.role === role)?.field;
      expect(parsed.fields.find(({ usageId }) => usageId === id)).toMatchObject({ ...field });
    }
  });
});

describe('the wheel', () => {
  const parsed = parseDescriptor(virtualWheel().descriptor!);
  const rig = virtualRig(16);

  test('describes steering and ten buttons in a numbered report', () => {
    expect(parsed.usesReportIds).toBe(true);
    expect(parsed.warnings).toEqual([]);
    expect(parsed.fields.map(({ usagePage, usageId }) => [usagePage, usageId])).toEqual([
      [SIMULATION, 0xc8],
      ...Array.from({ length: 10 }, (_, i) => [BUTTON, i + 1]),
    ]);
    expect(parsed.reportBytes.get(1)).toBe(4);
  });

  test('is assigned where its descriptor puts it', () => {
    const steering = rig.axes.find(({ role }) => role === 'steering');
    expect(parsed.fields[0]).toMatchObject({ ...steering?.field });
    for (const [i, button] of rig.buttons.entries())
      expect(parsed.fields[i + 1]).toMatchObject({ ...button.field });

    expect(rig.buttons.map(({ action }) => action).filter((action) => action !== null)).toEqual([
      'upshift',
      'downshift',
    ]);
  });
});
