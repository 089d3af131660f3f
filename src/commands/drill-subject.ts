import type { CarFile } from '../car/car-file.ts';
import { variantOfSheet } from '../corner/build-corner.ts';
import type { CornerSheet } from '../corner/corner-sheet.ts';
import type { CircuitEvent, EventSession } from '../drill/event/circuit-event.ts';
import { possibleCalls } from '../drill/live/late-calls.ts';
import type { PracticePlan } from '../drill/plan/practice-plan.ts';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import type { Target } from '../target/target.ts';
import { carCautions } from './car-cautions.ts';
import { findCar } from './car-files.ts';
import { CORNER_FILES, findCorner } from './corner-files.ts';
import type { DrillOptions } from './drill-options.ts';
import type { LapZone } from './event-lap.ts';
import type { LiveWish } from './live-options.ts';
import { isPath, profileIds, readProfileText } from './profile-files.ts';
import { findTarget, TARGET_FILES } from './target-files.ts';

/** What is driven: a target over time, or a braking zone with a live car. */
export type ZoneSubject =
  | { readonly kind: 'target'; readonly target: Target }
  | {
      readonly kind: 'car';
      readonly car: CarFile;
      readonly sheet: CornerSheet;
      /** One of the sheet's. */
      readonly variant: string;
      /** What the driver has to be told about the choice. */
      readonly notes: readonly string[];
    };

/** A zone of a plan, and the live car that follows it; null where nothing does. */
export interface PlanZoneSubject {
  readonly subject: ZoneSubject;
  readonly live: ZoneSubject | null;
}

/** A plan with everything it names. */
export interface PlanSubject {
  readonly kind: 'plan';
  readonly plan: PracticePlan;
  readonly zones: readonly PlanZoneSubject[];
  readonly carryOver: readonly PlanZoneSubject[];
}

/** Laps of an event with everything it names. */
export interface EventSubject {
  readonly kind: 'event';
  readonly event: CircuitEvent;
  readonly session: EventSession;
  /** The out-lap included. */
  readonly laps: number;
  readonly lap: readonly LapZone[];
  /** The first lap of a day; the same array where it is driven like the others. */
  readonly outLap: readonly LapZone[];
  /** Its feedback, hard reps, condition, late calls and countdown; null for the usual. */
  readonly plan: PracticePlan | null;
}

/** What a drill is about. */
export type DrillSubject = ZoneSubject | PlanSubject | EventSubject;

/** The car of a driver who names none: no driver aids, no downforce to speak of, iron discs. */
export const DEFAULT_CAR = 'gt';

/**
 * What the command line names; null where it names nothing. A name that is both a target and a corner is the target,
 * unless an option of the live car stands beside it.
 *
 * @throws Problem for a name that is neither (with the nearest one), and for a file with problems
 */
export async function findSubject(
  { target, named, live, asksForCar, plan, event }: DrillOptions,
  dataDir: string,
): Promise<DrillSubject | null> {
  if (event !== null) {
    const { eventSubject } = await import('./event-subject.ts');
    return eventSubject(event, { car: live.car, plan }, dataDir);
  }
  if (plan !== null) {
    const { planSubject } = await import('./plan-subject.ts');
    return planSubject(plan, dataDir);
  }
  if (target !== null) return { kind: 'target', target: await findTarget(target, dataDir) };
  if (live.corner === null && asksForCar && named !== null) await refuseTarget(named, dataDir);
  const corner = live.corner ?? (asksForCar ? named : null);
  if (corner !== null) return asWished(await findCorner(corner, dataDir), live, dataDir);
  return named === null ? null : targetOrCorner(named, live, dataDir);
}

/** The live car in a corner, with the calls that were asked for. @throws Problem where the sheet answers to none */
export async function asWished(
  sheet: CornerSheet,
  live: LiveWish,
  dataDir: string,
): Promise<DrillSubject> {
  const subject = await carIn(sheet, live, dataDir);
  if (live.callShare === 0 || possibleCalls(sheet, subject.variant).length > 0) return subject;
  throw new Problem(`${sheet.name} answers to no late call`, {
    where: '--calls',
    next: 'Leave out --calls, or say `call: damp` (or defend, car inside, yellow) in one of its variants.',
    exitCode: 2,
  });
}

/** @throws Problem for the name of a target alone, which no option of the live car can stand beside */
async function refuseTarget(named: string, dataDir: string): Promise<void> {
  const corners = await profileIds(CORNER_FILES, dataDir);
  const targets = await profileIds(TARGET_FILES, dataDir);
  if (corners.includes(named) || !targets.includes(named)) return;
  throw new Problem(`${JSON.stringify(named)} is a target, and the live car drives in a corner`, {
    where: 'drill',
    next: `Name a corner (${corners.join(', ')}), or leave out --car, --variant, --stint and --calls.`,
    exitCode: 2,
  });
}

/** The live car in a corner. @throws Problem for a car or variant that is not there */
export async function carIn(
  sheet: CornerSheet,
  { car, variant }: Pick<LiveWish, 'car' | 'variant'>,
  dataDir: string,
): Promise<Extract<ZoneSubject, { kind: 'car' }>> {
  const { name } = variantOfSheet(sheet, variant);
  const file = await findCar(car ?? DEFAULT_CAR, dataDir);
  const notes = [
    ...(car === null ? [`No car named: ${file.name} (${file.id}).`] : []),
    ...carCautions(file, sheet, name),
  ];
  return { kind: 'car', car: file, sheet, variant: name, notes };
}

async function targetOrCorner(
  named: string,
  live: LiveWish,
  dataDir: string,
): Promise<DrillSubject> {
  const corner = isPath(named) ? await sheetInFile(named) : await sheetById(named, dataDir);
  if (corner !== null) return asWished(corner, live, dataDir);
  return { kind: 'target', target: await findTarget(named, dataDir) };
}

/** Null for a file that is no sound corner sheet: it is then read, and found fault with, as a target. */
async function sheetInFile(path: string): Promise<CornerSheet | null> {
  const checked = CORNER_FILES.check(await readProfileText(path, 'target or corner'), path);
  return checked.kind === 'read' ? checked.value : null;
}

/** Null for the name of a target. @throws Problem for the name of nothing */
async function sheetById(id: string, dataDir: string): Promise<CornerSheet | null> {
  const targets = await profileIds(TARGET_FILES, dataDir);
  if (targets.includes(id)) return null;
  const corners = await profileIds(CORNER_FILES, dataDir);
  if (corners.includes(id)) return findCorner(id, dataDir);
  const close = nearest(id, [...targets, ...corners]);
  throw new Problem(`there is no target or corner ${JSON.stringify(id)}`, {
    next: `${close === null ? '' : `Did you mean ${close}? `}Targets are ${targets.join(', ')}; corners are ${corners.join(', ')}; or give the path of a file.`,
  });
}
