/** Where a value sits in an input report. Bits count from the first byte after the report id, least significant first. */
export interface FieldLocation {
  /** 0 where the device does not number its reports. */
  readonly reportId: number;
  readonly bitOffset: number;
  /** 1..32. */
  readonly bitSize: number;
  readonly signed: boolean;
}

/** Usages in a row, both ends included, each as usage page << 16 | usage (unsigned). */
export interface UsageRange {
  readonly first: number;
  readonly last: number;
}

/** One element of an input data field of a report descriptor (USB HID 1.11, section 6.2.2). */
export interface ReportField extends FieldLocation {
  readonly usagePage: number;
  readonly usageId: number;
  readonly logicalMin: number;
  readonly logicalMax: number;
  readonly physicalMin: number;
  readonly physicalMax: number;
  readonly unit: number;
  readonly unitExponent: number;
  readonly relative: boolean;
  readonly nullState: boolean;
  /**
   * False for an array element, whose value less `logicalMin` counts into `arrayUsages`; its own usage is the first of
   * them.
   */
  readonly variable: boolean;
  /** The usages an array element chooses from, in order; empty for a variable one. */
  readonly arrayUsages: readonly UsageRange[];
  readonly wrap: boolean;
  readonly nonLinear: boolean;
  readonly noPreferred: boolean;
  readonly volatile: boolean;
}

export interface ParsedDescriptor {
  /** Input data fields in report order, one entry per element; padding left out. */
  readonly fields: readonly ReportField[];
  readonly usesReportIds: boolean;
  /** Input report length in bytes by report id, the id byte not counted. */
  readonly reportBytes: ReadonlyMap<number, number>;
  /** Top-level application collections as usage page << 16 | usage. */
  readonly applications: readonly number[];
  /** Oddities that did not stop the parser, in words. */
  readonly warnings: readonly string[];
}
