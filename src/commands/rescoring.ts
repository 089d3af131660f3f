import { median } from '../consistency/median.ts';

/** What became of one rep. */
export type RepFate =
  /** `change` is the new score less that of the newest version before; null where there was none. */
  | { readonly kind: 'scored'; readonly rep: number; readonly change: number | null }
  /** It had that version already. */
  | { readonly kind: 'known'; readonly rep: number }
  | { readonly kind: 'void'; readonly rep: number }
  | { readonly kind: 'lost'; readonly rep: number; readonly reason: string };

/** A rescoring that has ended, or was ended by the driver before its end. */
export interface Rescoring {
  readonly version: number;
  readonly fates: readonly RepFate[];
  readonly interrupted: boolean;
}

export function rescoringJson({ version, fates, interrupted }: Rescoring): object {
  return {
    score_version: version,
    rescored_count: count(fates, 'scored'),
    had_version_count: count(fates, 'known'),
    void_count: count(fates, 'void'),
    median_change_points: median(changes(fates)),
    interrupted,
    not_rescorable: [...byReason(fates)].map(([reason, reps]) => ({ reason, reps })),
  };
}

export function rescoringText({ version, fates, interrupted }: Rescoring): string {
  const change = median(changes(fates));
  const lines = [
    `${count(fates, 'scored')} of ${fates.length} reps have a new score of version ${version} beside the stored ones.`,
    ...(change === null ? [] : [`Median change ${change.toFixed(1)} points.`]),
    ...one(count(fates, 'known'), (reps) => `${reps} had one already.`),
    ...one(count(fates, 'void'), (reps) => `${reps} are void: aborted, or lost with a device.`),
    ...[...byReason(fates)].map(
      ([reason, reps]) => `${reps.length} cannot be scored: ${reason}. Reps ${someOf(reps)}.`,
    ),
    ...(interrupted ? ['Interrupted: what is done is kept; start it again for the rest.'] : []),
  ];
  return `${lines.join('\n')}\n`;
}

function one(reps: number, line: (reps: number) => string): string[] {
  return reps === 0 ? [] : [line(reps)];
}

const MOST_LISTED = 10;

function someOf(reps: readonly number[]): string {
  const listed = reps.slice(0, MOST_LISTED).join(', ');
  return reps.length > MOST_LISTED ? `${listed} and ${reps.length - MOST_LISTED} more` : listed;
}

function count(fates: readonly RepFate[], kind: RepFate['kind']): number {
  return fates.filter((fate) => fate.kind === kind).length;
}

function changes(fates: readonly RepFate[]): number[] {
  return fates.flatMap((fate) =>
    fate.kind === 'scored' && fate.change !== null ? [fate.change] : [],
  );
}

function byReason(fates: readonly RepFate[]): Map<string, number[]> {
  const reasons = new Map<string, number[]>();
  for (const fate of fates) {
    if (fate.kind !== 'lost') continue;
    const reps = reasons.get(fate.reason) ?? [];
    reps.push(fate.rep);
    reasons.set(fate.reason, reps);
  }
  return reasons;
}
