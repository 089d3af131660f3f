import type { DecodedReport } from './decode-report.ts';
import type { ParsedDescriptor, ReportField } from './report-field.ts';
import { joinUsage, usageIdOf, usagePageOf } from './usage-list.ts';
import { usageName } from './usage-name.ts';

/** A descriptor and reports as the JSON of `rig decode`: plain values, names in snake case. */
export function decodedJson(
  descriptor: ParsedDescriptor,
  reports: readonly DecodedReport[],
): Record<string, unknown> {
  return {
    uses_report_ids: descriptor.usesReportIds,
    report_bytes: Object.fromEntries(descriptor.reportBytes),
    applications: descriptor.applications.map(usageJson),
    fields: descriptor.fields.map(fieldJson),
    reports: reports.map(({ reportId, values }) => ({ report_id: reportId, values })),
    warnings: descriptor.warnings,
  };
}

function usageJson(usage: number): Record<string, unknown> {
  const [page, id] = [usagePageOf(usage), usageIdOf(usage)];
  return { usage_page: page, usage_id: id, usage_name: usageName(page, id) };
}

function fieldJson(field: ReportField): Record<string, unknown> {
  return {
    report_id: field.reportId,
    ...usageJson(joinUsage(field.usagePage, field.usageId)),
    bit_offset: field.bitOffset,
    bit_size: field.bitSize,
    logical_min: field.logicalMin,
    logical_max: field.logicalMax,
    physical_min: field.physicalMin,
    physical_max: field.physicalMax,
    unit: field.unit,
    unit_exponent: field.unitExponent,
    flags: flagsJson(field),
  };
}

function flagsJson(field: ReportField): Record<string, boolean> {
  return {
    variable: field.variable,
    relative: field.relative,
    wrap: field.wrap,
    non_linear: field.nonLinear,
    no_preferred: field.noPreferred,
    null_state: field.nullState,
    volatile: field.volatile,
  };
}
