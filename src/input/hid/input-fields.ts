import { logicalRange, physicalRange } from './field-range.ts';
import type { GlobalState } from './global-state.ts';
import type { ReportField, UsageRange } from './report-field.ts';
import { spreadUsages, usageIdOf, usagePageOf } from './usage-list.ts';

/** Widest field that can be decoded. */
export const MAX_FIELD_BITS = 32;

/** Bits of an input item's data (USB HID 1.11, 6.2.2.5). */
const FLAG = {
  constant: 1 << 0,
  variable: 1 << 1,
  relative: 1 << 2,
  wrap: 1 << 3,
  nonLinear: 1 << 4,
  noPreferred: 1 << 5,
  nullState: 1 << 6,
  volatile: 1 << 7,
} as const;

/** An input item with everything that was in force when it came. */
export interface InputItem {
  readonly flags: number;
  readonly globals: GlobalState;
  readonly usages: readonly UsageRange[];
  readonly reportId: number;
  /** Where its first element starts. */
  readonly bitOffset: number;
}

/** True for constant items and for data nobody named: both only fill the report. */
export function isPadding({ flags, usages, globals }: InputItem): boolean {
  return (flags & FLAG.constant) !== 0 || usages.length === 0 || globals.reportSize === 0;
}

/** One field per element. The report size must be 1..32 and the count already be bounded. */
export function inputFields(item: InputItem, warn: (text: string) => void): ReportField[] {
  const { reportSize, reportCount } = item.globals;
  const shared = sharedProperties(item, warn);
  const usages = shared.variable ? spreadUsages(item.usages, reportCount) : null;
  return Array.from({ length: reportCount }, (_, i) => {
    const usage = usages?.[i] ?? item.usages[0]!.first;
    return {
      ...shared,
      bitOffset: item.bitOffset + i * reportSize,
      usagePage: usagePageOf(usage),
      usageId: usageIdOf(usage),
    };
  });
}

type SharedProperties = Omit<ReportField, 'bitOffset' | 'usagePage' | 'usageId'>;

function sharedProperties(item: InputItem, warn: (text: string) => void): SharedProperties {
  const { globals, flags } = item;
  const logical = logicalRange(globals, warn);
  const physical = physicalRange(globals, logical);
  const variable = (flags & FLAG.variable) !== 0;
  return {
    reportId: item.reportId,
    bitSize: globals.reportSize,
    signed: logical.min < 0,
    logicalMin: logical.min,
    logicalMax: logical.max,
    physicalMin: physical.min,
    physicalMax: physical.max,
    unit: globals.unit,
    unitExponent: globals.unitExponent,
    variable,
    arrayUsages: variable ? [] : item.usages,
    relative: (flags & FLAG.relative) !== 0,
    wrap: (flags & FLAG.wrap) !== 0,
    nonLinear: (flags & FLAG.nonLinear) !== 0,
    noPreferred: (flags & FLAG.noPreferred) !== 0,
    nullState: (flags & FLAG.nullState) !== 0,
    volatile: (flags & FLAG.volatile) !== 0,
  };
}
