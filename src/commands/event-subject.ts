import { outLapOf, sessionOf } from '../drill/event/sessions-of.ts';
import type { EventSubject } from './drill-subject.ts';
import { findEvent } from './event-files.ts';
import { eventLap, type LapZone } from './event-lap.ts';
import type { EventWish } from './event-options.ts';
import { findPlan } from './plan-files.ts';

/** What else the command line says about the laps; null for nothing. */
interface LapWish {
  readonly car: string | null;
  readonly plan: string | null;
}

/** An event with everything it names. @throws Problem for an event with problems or a name of nothing */
export async function eventSubject(
  { event: idOrPath, session: asked, laps }: EventWish,
  { car, plan }: LapWish,
  dataDir: string,
): Promise<EventSubject> {
  const event = await findEvent(idOrPath, dataDir);
  const session = sessionOf(event, asked);
  const lap = await eventLap(event, session, car, dataDir);
  const outLap = await eventLap(event, outLapOf(event, session), car, dataDir);
  return {
    kind: 'event',
    event,
    session,
    laps,
    lap,
    outLap: isSame(lap, outLap) ? lap : outLap,
    plan: plan === null ? null : await findPlan(plan, dataDir),
  };
}

function isSame(lap: readonly LapZone[], other: readonly LapZone[]): boolean {
  return lap.every(({ subject }, i) => subject.variant === other[i]!.subject.variant);
}
