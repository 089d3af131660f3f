import { createRequire } from 'node:module';
import { Problem } from '../../problem.ts';
import type { HidApi } from './hid-api.ts';

/**
 * The HID library, loaded on first use: it is optional, and help must not pay for it. Devices are opened shared, so
 * that a game can read them at the same time, and read on threads of the library's own.
 *
 * @throws Problem saying which package is missing.
 */
export async function loadHid(): Promise<HidApi> {
  try {
    const { devicesAsync, getHidapiVersion, HIDAsync } = createRequire(import.meta.url)(
      'node-hid',
    ) as typeof import('node-hid');
    // The binding is loaded by the first call, not by the import.
    getHidapiVersion();
    return {
      records: () => devicesAsync(),
      open: (path) => HIDAsync.open(path, { nonExclusive: true }),
    };
  } catch (error) {
    throw explainLoadFailure(error);
  }
}

/** The problem behind an error of loading the HID library. */
export function explainLoadFailure(error: unknown): Problem {
  const text = error instanceof Error ? error.message : String(error);
  const library = /lib(usb|udev)[-\w.]*/.exec(text)?.[0];
  if (library !== undefined) {
    return new Problem(
      `pedals and wheels cannot be read: the system library ${library} is missing`,
      {
        next: 'Install it: `sudo apt install libusb-1.0-0 libudev1` on Debian and Ubuntu.',
      },
    );
  }
  if ((error as { code?: unknown }).code === 'MODULE_NOT_FOUND') {
    return new Problem(
      'pedals and wheels cannot be read: the optional package node-hid is missing',
      {
        next: 'Run `npm install node-hid` in the folder of this program.',
      },
    );
  }
  return new Problem(`pedals and wheels cannot be read: ${text.split('\n')[0]}`, {
    next: 'Run `npm rebuild node-hid` in the folder of this program.',
  });
}
