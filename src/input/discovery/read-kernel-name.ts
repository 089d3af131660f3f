import { HIDRAW_CLASS, readHidrawFile } from './read-hidraw-file.ts';

/**
 * What the kernel calls the device of a hidraw node, often maker and product in one. The HID library gives no name at
 * all where one letter of it is not ASCII.
 *
 * @param path the device's node, for example `/dev/hidraw3`
 * @returns not safe to print; null where the system gives none
 */
export async function readKernelName(
  path: string,
  classFolder: string = HIDRAW_CLASS,
): Promise<string | null> {
  const uevent = await readHidrawFile(path, 'uevent', { maxBytes: 4096, classFolder });
  if (uevent === null) return null;
  return /^HID_NAME=(.*)$/m.exec(new TextDecoder().decode(uevent))?.[1] ?? null;
}
