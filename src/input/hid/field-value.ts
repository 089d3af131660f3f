import type { ReportField } from './report-field.ts';

const HAT_SWITCH = 0x39;
const GENERIC_DESKTOP = 0x01;

/**
 * What a raw count of this field says: the count itself, or null where it says "no value". Outside its logical range
 * that is a field with a null state (USB HID 1.11, 6.2.2.5), an array element that names no control (6.2.2.5), and any
 * hat, as many do not declare the null state they send. An axis out of its range keeps its count.
 */
export function fieldValue(field: ReportField, count: number | null): number | null {
  if (count === null) return null;
  const inside = count >= field.logicalMin && count <= field.logicalMax;
  const canBeEmpty = field.nullState || !field.variable || isHat(field);
  return inside || !canBeEmpty ? count : null;
}

function isHat({ usagePage, usageId }: ReportField): boolean {
  return usagePage === GENERIC_DESKTOP && usageId === HAT_SWITCH;
}
