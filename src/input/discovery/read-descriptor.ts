import { open } from 'node:fs/promises';
import { basename, join } from 'node:path';

/** Largest report descriptor a Linux kernel keeps (HID_MAX_DESCRIPTOR_SIZE). */
const DESCRIPTOR_BYTES_MAX = 4096;

/**
 * The report descriptor of a hidraw node, which reports follow, the kernel's fixes included. Every user may read it.
 *
 * @param path the device's node, for example `/dev/hidraw3`
 * @param classFolder where the kernel lists hidraw devices; there is none outside Linux
 * @returns null where the system gives none
 */
export async function readDescriptor(
  path: string,
  classFolder: string = '/sys/class/hidraw',
): Promise<Uint8Array | null> {
  const node = basename(path);
  if (!/^hidraw\d+$/.test(node)) return null;
  try {
    const file = await open(join(classFolder, node, 'device', 'report_descriptor'), 'r');
    try {
      const buffer = new Uint8Array(DESCRIPTOR_BYTES_MAX);
      const { bytesRead } = await file.read(buffer, 0, buffer.length, 0);
      return bytesRead === 0 ? null : buffer.slice(0, bytesRead);
    } finally {
      await file.close();
    }
  } catch {
    return null;
  }
}
