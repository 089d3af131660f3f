import { readItems } from './descriptor-item.ts';
import { DescriptorParser } from './descriptor-parser.ts';
import { descriptorProblem } from './descriptor-problem.ts';
import type { ParsedDescriptor } from './report-field.ts';

/** What the Linux kernel accepts at most (HID_MAX_DESCRIPTOR_SIZE). */
export const MAX_DESCRIPTOR_BYTES = 4096;

/**
 * Reads a report descriptor (USB HID 1.11, 6.2.2). Oddities of real devices are taken as meant and listed in
 * `warnings`; the work and the memory are bounded by the length and by the limits of `ReportLayout`.
 * @throws Problem for an empty or overlong descriptor, a pop without a push, report id 0 or above 255, reports with and
 * without ids, delimiter sets that nest or stay open, and sizes beyond any device's
 */
export function parseDescriptor(bytes: Uint8Array): ParsedDescriptor {
  if (bytes.length === 0) throw descriptorProblem('the report descriptor is empty', null);
  if (bytes.length > MAX_DESCRIPTOR_BYTES)
    throw descriptorProblem(
      `${bytes.length} bytes are too long (at most ${MAX_DESCRIPTOR_BYTES})`,
      null,
    );
  const parser = new DescriptorParser();
  for (const item of readItems(bytes, (text) => parser.warn(text))) parser.take(item);
  return parser.finish();
}
