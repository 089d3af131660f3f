import { expect, test } from 'vitest';
import { usageName, usagePageName } from '../../../src/input/hid/usage-name.ts';

// HID Usage Tables 1.3, chapters 3 to 5.
test.each([
  [0x01, 0x04, 'Joystick'],
  [0x01, 0x30, 'X'],
  [0x01, 0x35, 'Rz'],
  [0x01, 0x36, 'Slider'],
  [0x01, 0x39, 'Hat Switch'],
  [0x02, 0x02, 'Automobile Simulation Device'],
  [0x02, 0xba, 'Rudder'],
  [0x02, 0xbb, 'Throttle'],
  [0x02, 0xbf, 'Toe Brake'],
  [0x02, 0xc4, 'Accelerator'],
  [0x02, 0xc5, 'Brake'],
  [0x02, 0xc6, 'Clutch'],
  [0x02, 0xc7, 'Shifter'],
  [0x02, 0xc8, 'Steering'],
  [0x02, 0xcf, 'Front Brake'],
  [0x02, 0xd0, 'Rear Brake'],
  [0x09, 14, 'Button 14'],
  [0x09, 0, 'Button 0'],
  [0x02, 0xd1, 'Simulation Controls 0xd1'],
  [0x0c, 0xe9, 'Consumer 0xe9'],
  [0x0f, 0x70, 'Physical Input Device 0x70'],
  [0xff00, 0x21, 'Vendor-defined 0xff00 0x21'],
  [0x11, 0x01, 'Reserved page 0x11 0x01'],
])('page %i, usage %i is %s', (page, id, name) => expect(usageName(page, id)).toBe(name));

test('pages alone', () => {
  expect(usagePageName(0x01)).toBe('Generic Desktop');
  expect(usagePageName(0xffff)).toBe('Vendor-defined 0xffff');
});
