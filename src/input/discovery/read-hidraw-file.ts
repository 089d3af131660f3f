import { open } from 'node:fs/promises';
import { basename, join } from 'node:path';

/** Where the kernel lists hidraw devices; there is no such folder outside Linux. */
export const HIDRAW_CLASS = '/sys/class/hidraw';

/**
 * The start of one of the files the kernel keeps of a hidraw node's device. Every user may read them.
 *
 * @param path the device's node, for example `/dev/hidraw3`
 * @returns null where there is no such file, or nothing in it
 */
export async function readHidrawFile(
  path: string,
  name: string,
  { maxBytes, classFolder }: { readonly maxBytes: number; readonly classFolder: string },
): Promise<Uint8Array | null> {
  const node = basename(path);
  if (!/^hidraw\d+$/.test(node)) return null;
  try {
    const file = await open(join(classFolder, node, 'device', name), 'r');
    try {
      const buffer = new Uint8Array(maxBytes);
      const { bytesRead } = await file.read(buffer, 0, maxBytes, 0);
      return bytesRead === 0 ? null : buffer.slice(0, bytesRead);
    } finally {
      await file.close();
    }
  } catch {
    return null;
  }
}
