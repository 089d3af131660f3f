import { describe, expect, test } from 'vitest';
import { proposeRig } from '../../../src/input/rig/propose-rig.ts';
import {
  NAMED_PEDALS,
  PACKED_WHEEL,
  SPEC_MOUSE,
  THREE_SLIDERS,
  TWO_REPORTS,
} from '../../reference/descriptors.ts';
import { deviceOf, identity } from '../report-batches.ts';

/** Role, product and place of each proposed axis, for reading at a glance. */
function places(...descriptors: readonly (Uint8Array | null)[]): string[] {
  return proposeRig(descriptors.map((bytes, i) => deviceOf(i + 1, 'device', bytes))).axes.map(
    ({ role, device, field }) =>
      `${role} ${device.productId}: report ${field.reportId} bit ${field.bitOffset} size ${field.bitSize}`,
  );
}

describe('proposeRig', () => {
  test('takes pedals at their name', () => {
    expect(places(NAMED_PEDALS)).toEqual([
      'brake 1: report 0 bit 16 size 16',
      'throttle 1: report 0 bit 0 size 16',
      'clutch 1: report 0 bit 32 size 16',
    ]);
  });

  test('takes Rz for the brake, X for the wheel and Y for the throttle where nothing has a name', () => {
    expect(places(PACKED_WHEEL)).toEqual([
      'brake 1: report 0 bit 48 size 8',
      'steering 1: report 0 bit 0 size 14',
      'throttle 1: report 0 bit 40 size 8',
    ]);
  });

  test('of Z and Rz the brake is Rz', () => {
    // Generic Desktop joystick: Z and Rz, 8 bits each of 0..255.
    const descriptor = Uint8Array.of(
      ...[0x05, 0x01, 0x09, 0x04, 0xa1, 0x01, 0x09, 0x32, 0x09, 0x35, 0x15, 0x00, 0x26, 0xff, 0x00],
      ...[0x75, 0x08, 0x95, 0x02, 0x81, 0x02, 0xc0],
    );
    expect(places(descriptor)).toEqual([
      'brake 1: report 0 bit 8 size 8',
      'throttle 1: report 0 bit 0 size 8',
    ]);
  });

  test('prefers a named pedal on another device', () => {
    expect(places(PACKED_WHEEL, NAMED_PEDALS)).toEqual([
      'brake 2: report 0 bit 16 size 16',
      'steering 1: report 0 bit 0 size 14',
      'throttle 2: report 0 bit 0 size 16',
      'clutch 2: report 0 bit 32 size 16',
    ]);
  });

  test('three axes of one usage are three pedals', () => {
    expect(places(THREE_SLIDERS)).toEqual([
      'brake 1: report 0 bit 0 size 10',
      'throttle 1: report 0 bit 10 size 10',
      'clutch 1: report 0 bit 20 size 10',
    ]);
  });

  test('proposes nothing for a mouse, nor without a descriptor', () => {
    expect(places(SPEC_MOUSE, null)).toEqual([]);
  });

  test('pedals rest at the minimum, the wheel in the middle with its left stop at the minimum', () => {
    const { axes } = proposeRig([deviceOf(1, 'wheel', TWO_REPORTS)]);
    const spans = axes.map(({ role, calibration: c }) => [role, c.restCounts, c.fullCounts]);
    expect(spans).toEqual([
      ['brake', -32767, 32767],
      ['steering', 0, -32767],
      ['throttle', -32767, 32767],
    ]);
  });

  test('every proposal is unconfirmed and names its device and usage', () => {
    const { axes } = proposeRig([deviceOf(1, 'pedals', NAMED_PEDALS)]);
    for (const axis of axes) {
      expect(axis.status).toBe('unconfirmed');
      expect(axis.device).toEqual(identity(1));
    }
    expect(axes[0]?.described).toMatchObject({ usagePage: 2, usageId: 0xc5 });
    expect(Object.keys(axes[0]?.field ?? {}).sort()).toEqual([
      'bitOffset',
      'bitSize',
      'reportId',
      'signed',
    ]);
  });
});
