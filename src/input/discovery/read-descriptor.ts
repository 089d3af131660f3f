import { MAX_DESCRIPTOR_BYTES } from '../hid/parse-descriptor.ts';
import { HIDRAW_CLASS, readHidrawFile } from './read-hidraw-file.ts';

/**
 * The report descriptor of a hidraw node, which reports follow, the kernel's fixes included.
 *
 * @param path the device's node, for example `/dev/hidraw3`
 * @returns null where the system gives none
 */
export function readDescriptor(
  path: string,
  classFolder: string = HIDRAW_CLASS,
): Promise<Uint8Array | null> {
  return readHidrawFile(path, 'report_descriptor', { maxBytes: MAX_DESCRIPTOR_BYTES, classFolder });
}
