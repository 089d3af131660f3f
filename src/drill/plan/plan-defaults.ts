import { FIRST_OF_DAY_REPS } from '../feedback-schedule.ts';
import type { FeedbackRule, Promotion, RepOrder } from './practice-plan.ts';

type Counted = Extract<FeedbackRule, { kind: 'thinning' }>['counted'];

/** What a plan does that does not say otherwise. */
export const PLAN_DEFAULTS: {
  readonly order: RepOrder;
  readonly counted: Counted;
  readonly firstOfDayReps: number;
  readonly warmUpReps: number;
  readonly mostShownInARow: number;
  readonly carryOverReps: number;
  readonly mostHardReps: number;
  readonly hardFromLevel: number;
  readonly fatigueLimit: number;
  readonly promotion: Promotion;
} = {
  order: 'blocked',
  counted: 'life',
  firstOfDayReps: FIRST_OF_DAY_REPS,
  warmUpReps: 4,
  mostShownInARow: 3,
  carryOverReps: 5,
  /** Common practice, no source: legs last for about so many hard stops in a sitting. */
  mostHardReps: 60,
  hardFromLevel: 0.6,
  /** ISO 5725-6:1994, 4.2: two means of ten differ by 2.8 repeatability deviations over the root of ten. */
  fatigueLimit: 2.8,
  /** Hidden reps of the virtual drivers lie in the corridor over 0.45 (skilled) and 0.3 (club) of the release. */
  promotion: { inCorridorReps: 8, ofHiddenReps: 10, corridorShare: 0.4 },
};
