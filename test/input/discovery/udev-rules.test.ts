import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { udevRules } from '../../../src/input/discovery/udev-rules.ts';
import { identity } from '../report-batches.ts';

/** Lines of a rules file as udev(7) has them: empty, a comment, or a rule; a backslash at the end continues a line. */
const RULE =
  /^KERNEL=="hidraw\*", (ATTRS\{idVendor\}=="[0-9a-f]{4}", ATTRS\{idProduct\}=="[0-9a-f]{4}"|KERNELS=="\*:[0-9A-F]{4}:[0-9A-F]{4}\.\*"), TAG\+="uaccess"$/;
const COMMENT = /^# [^\n\r\\]*$/;

describe('udev rules', () => {
  test('name each model once', () => {
    const pedals = { identity: identity(1), name: 'Pedals' };
    const twin = { identity: identity(1, { serial: 'B' }), name: 'Pedals' };
    const wheel = { identity: identity(2, { interfaceNumber: -1 }), name: 'Wheel' };
    expect(udevRules([pedals, twin, wheel])).toEqual([
      '# Pedals',
      'KERNEL=="hidraw*", ATTRS{idVendor}=="f055", ATTRS{idProduct}=="0001", TAG+="uaccess"',
      '# Wheel',
      'KERNEL=="hidraw*", KERNELS=="*:F055:0002.*", TAG+="uaccess"',
    ]);
  });

  test.each([
    'Pedals\nKERNEL=="*", MODE="0666", RUN+="/bin/sh"',
    'Pedals\r\nRUN+="/bin/sh"',
    'Pedals\u2028RUN+="/bin/sh"',
    'Pedals \\',
    '\u001b[2J\u009b31mPedals',
    '',
    '\\\\\\',
  ])('cannot be broken by a device called %j', (name) => {
    const [comment, rule, ...more] = udevRules([{ identity: identity(1), name }]);
    expect(comment).toMatch(COMMENT);
    expect(rule).toMatch(RULE);
    expect(more).toEqual([]);
  });

  test('property: are a comment and a rule, whatever a device says of itself', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 80 }),
        fc.integer(),
        fc.integer(),
        fc.integer({ min: -2, max: 300 }),
        (name, vendorId, productId, interfaceNumber) => {
          const own = identity(productId, { vendorId, interfaceNumber });
          const lines = udevRules([{ identity: own, name }]);
          expect(lines).toHaveLength(2);
          expect(lines[0]).toMatch(COMMENT);
          expect(lines[1]).toMatch(RULE);
        },
      ),
    );
  });
});
