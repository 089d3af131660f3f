import type { DecodedReport } from './decode-report.ts';
import type { ParsedDescriptor, ReportField } from './report-field.ts';
import { usageName } from './usage-name.ts';

/** A descriptor as a table, one line per field and one column of values per report; the last line ends in a line end. */
export function decodedTable(
  descriptor: ParsedDescriptor,
  reports: readonly DecodedReport[],
): string {
  const heads = ['id', 'bit', 'bits', 'usage', 'logical', 'physical', 'unit', 'flags'];
  const rows = descriptor.fields.map((field, i) => [
    ...fieldCells(field),
    ...reports.map(({ values }) => String(values[i] ?? '-')),
  ]);
  return alignColumns([[...heads, ...reports.map((_, i) => `report ${i + 1}`)], ...rows]);
}

function fieldCells(field: ReportField): string[] {
  return [
    field.reportId === 0 ? '-' : String(field.reportId),
    String(field.bitOffset),
    String(field.bitSize),
    usageName(field.usagePage, field.usageId),
    `${field.logicalMin}..${field.logicalMax}`,
    `${field.physicalMin}..${field.physicalMax}`,
    unitCell(field),
    flagCell(field),
  ];
}

function unitCell({ unit, unitExponent }: ReportField): string {
  if (unit === 0) return '-';
  const exponent = unitExponent === 0 ? '' : ` e${unitExponent}`;
  return `0x${unit.toString(16)}${exponent}`;
}

function flagCell(field: ReportField): string {
  const flags = [
    !field.variable && 'array',
    field.relative && 'relative',
    field.wrap && 'wrap',
    field.nonLinear && 'non-linear',
    field.noPreferred && 'no preferred',
    field.nullState && 'null state',
    field.volatile && 'volatile',
  ];
  return flags.filter((flag) => flag !== false).join(', ') || '-';
}

function alignColumns(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => row[column]!.length)),
  );
  const lines = rows.map((row) => row.map((cell, i) => cell.padEnd(widths[i]!)).join('  '));
  return lines.map((line) => `${line.trimEnd()}\n`).join('');
}
