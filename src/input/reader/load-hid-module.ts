import type { HidApi, HidModule } from './hid-api.ts';

/**
 * @param address of the module to load, null for the real HID library
 * @throws Problem where the library does not load
 */
export async function loadHidModule(address: string | null): Promise<HidApi> {
  const module: HidModule =
    address === null ? await import('./node-hid.ts') : await import(address);
  return module.loadHid();
}
