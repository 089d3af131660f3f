import type { FieldLocation } from './report-field.ts';

/**
 * Reports of one device, in order of arrival and as delivered: the report id first exactly when the device numbers its
 * reports.
 */
export type Reports = readonly Uint8Array[];

/** What was recorded to find one control by moving it. */
export interface ControlRecording {
  /** While nothing was touched; may be empty for a device that is silent at rest. */
  readonly rest: Reports;
  /** While only this control was moved, there and back at least once (better three times). */
  readonly moved: Reports;
  /** While other controls were moved and this one was left alone, one entry per control; may be empty. */
  readonly others: readonly Reports[];
  /** Whether the device numbers its reports; null to find out. */
  readonly numbered: boolean | null;
  /** The fields of its descriptor; null without one, to search every bit. */
  readonly fields: readonly FieldLocation[] | null;
}

/** Why a recording cannot be used; `message` is for the driver and says what to do. */
export interface Refusal {
  readonly kind: 'refused';
  readonly reason:
    | 'no-reports'
    | 'nothing-moved'
    | 'too-small'
    | 'not-released'
    | 'too-noisy'
    | 'several-moved'
    | 'alike'
    | 'not-an-axis'
    | 'same-control';
  readonly message: string;
  /** The fields that moved, where more than one did. */
  readonly moved: readonly FieldLocation[];
}

/** A refusal as a value. */
export function refuse(
  reason: Refusal['reason'],
  message: string,
  moved: readonly FieldLocation[] = [],
): Refusal {
  return { kind: 'refused', reason, message, moved };
}
