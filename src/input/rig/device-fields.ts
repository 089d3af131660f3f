import { parseDescriptor } from '../hid/parse-descriptor.ts';
import type { FieldLocation, ReportField } from '../hid/report-field.ts';
import type { RigDevice } from '../rig-device.ts';

/** Input fields a device describes; none where the system gives no descriptor or one that nobody can read. */
export function deviceFields(device: RigDevice): readonly ReportField[] {
  if (device.descriptor === null) return [];
  try {
    return parseDescriptor(device.descriptor).fields;
  } catch {
    // Learning by moving needs no descriptor; `rig decode` is where its faults are told.
    return [];
  }
}

/** The described field at a location, or null for a field that was learnt by moving. */
export function describedField(
  fields: readonly ReportField[],
  { reportId, bitOffset, bitSize }: FieldLocation,
): ReportField | null {
  const found = fields.find(
    (field) =>
      field.reportId === reportId && field.bitOffset === bitOffset && field.bitSize === bitSize,
  );
  return found ?? null;
}
