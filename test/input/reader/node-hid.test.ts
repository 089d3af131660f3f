import { describe, expect, test } from 'vitest';
import { explainLoadFailure } from '../../../src/input/reader/node-hid.ts';

describe('a HID library that does not load', () => {
  test('for a missing system library names the package to install', () => {
    // The words of the GNU dynamic linker.
    const error = new Error(
      'libusb-1.0.so.0: cannot open shared object file: No such file or directory',
    );
    expect(explainLoadFailure(error)).toMatchObject({
      message: 'pedals and wheels cannot be read: the system library libusb-1.0.so.0 is missing',
      next: 'Install it: `sudo apt install libusb-1.0-0 libudev1` on Debian and Ubuntu.',
    });
    expect(explainLoadFailure(new Error('libudev.so.1: cannot open')).message).toMatch(
      /libudev\.so\.1/,
    );
  });

  test('for a package that was left out names it', () => {
    const error = Object.assign(new Error("Cannot find module 'node-hid'"), {
      code: 'MODULE_NOT_FOUND',
    });
    expect(explainLoadFailure(error).next).toMatch(/npm install node-hid/);
  });

  test('for any other reason passes the first line on', () => {
    const problem = explainLoadFailure(new Error('No native build was found\n  at x'));
    expect(problem.message).toBe('pedals and wheels cannot be read: No native build was found');
    expect(problem.next).toMatch(/npm rebuild/);
  });
});
