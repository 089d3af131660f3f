import { countText } from '../../number-text.ts';
import { Problem } from '../../problem.ts';
import { compileField } from './compile-field.ts';
import { fieldValue } from './field-value.ts';
import type { ParsedDescriptor } from './report-field.ts';

export interface DecodedReport {
  /** 0 where the device does not number its reports. */
  readonly reportId: number;
  /** In the order of the descriptor's fields; null where the field is in another report or says "no value". */
  readonly values: readonly (number | null)[];
}

/**
 * All values of one report. For looking at a device, not for a stream: see `compileField`.
 * @param bytes with the report id first exactly when the descriptor uses report ids
 * @param where names the report in a message
 * @throws Problem for a report id that is not described, and for a report shorter than its fields
 */
export function decodeReport(
  descriptor: ParsedDescriptor,
  bytes: Uint8Array,
  where: string,
): DecodedReport {
  const reportId = reportIdOf(descriptor, bytes, where);
  refuseShort(descriptor, bytes, reportId, where);
  const values = descriptor.fields.map((field) =>
    fieldValue(field, compileField(field)(bytes, 0, bytes.length)),
  );
  return { reportId, values };
}

function reportIdOf(descriptor: ParsedDescriptor, bytes: Uint8Array, where: string): number {
  if (!descriptor.usesReportIds) return 0;
  const id = bytes[0];
  if (id !== undefined && descriptor.reportBytes.has(id)) return id;
  const what =
    id === undefined
      ? 'the report has 0 bytes and its report id needs 1'
      : `report id ${id} is not described`;
  const known = [...descriptor.reportBytes.keys()].sort((a, b) => a - b).join(', ') || 'none';
  throw new Problem(what, {
    where,
    next: `Start the report with its id byte; input reports of this descriptor: ${known}.`,
  });
}

function refuseShort(
  { fields, usesReportIds }: ParsedDescriptor,
  bytes: Uint8Array,
  reportId: number,
  where: string,
): void {
  const ends = fields
    .filter((field) => field.reportId === reportId)
    .map((field) => field.bitOffset + field.bitSize);
  const needed = (usesReportIds ? 1 : 0) + Math.ceil(Math.max(0, ...ends) / 8);
  if (bytes.length >= needed) return;
  throw new Problem(
    `the report has ${countText(bytes.length, 'byte')} and its fields need ${needed}`,
    {
      where,
      next: usesReportIds
        ? 'Give the whole report, the report id byte included.'
        : 'Give the whole report; this device has no report id byte.',
    },
  );
}
