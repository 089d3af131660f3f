import { percentText } from '../../number-text.ts';
import type { FeedbackRule, PlannedBlock, PlanZone, PracticePlan, Vary } from './practice-plan.ts';
import { zoneName } from './zone-name.ts';

/** What a plan does, in words, a row for each thing it says. */
export function planTable(plan: PracticePlan): readonly (readonly [string, string])[] {
  return [
    ...plan.zones.map((zone, i) => [`zone ${i + 1}`, zoneText(zone)] as const),
    ['first of day', firstOfDayText(plan)],
    ['warm-up', plan.warmUpReps === 0 ? 'none' : `${counted(plan.warmUpReps)}, shown`],
    ...plan.blocks.map((block, i) => [`block ${i + 1}`, blockText(block)] as const),
    ['feedback', feedbackText(plan.feedback, plan.mostShownInARow)],
    ['hard reps', hardText(plan)],
    ...optional(plan),
  ];
}

function optional(plan: PracticePlan): readonly (readonly [string, string])[] {
  const { carryOver, promotion, restS, countdownS, stintGapS, lateCallShare, condition } = plan;
  const rows: readonly (readonly [string, string | null])[] = [
    ['condition', condition],
    [
      'carry-over',
      carryOver &&
        `once a week ${counted(carryOver.reps)}, hidden, on what was left for longest of ${carryOver.zones.map(zoneName).join('; ')}`,
    ],
    [
      'promotion',
      promotion &&
        `${promotion.inCorridorReps} of the last ${promotion.ofHiddenReps} hidden reps in the corridor over ${percentText(promotion.corridorShare)} of the release: paced by the steering, then the live car`,
    ],
    ['rest', restS === null ? null : `${restS} s`],
    ['countdown', countdownS === null ? null : `${countdownS} s`],
    ['stint', stintGapS === null ? null : `brakes stay hot, ${stintGapS} s of road between zones`],
    [
      'late calls',
      lateCallShare === 0 ? null : `on ${percentText(lateCallShare)} of live-car reps`,
    ],
  ];
  return rows.flatMap(([head, text]) => (text === null ? [] : [[head, text] as const]));
}

function zoneText(zone: PlanZone): string {
  if (zone.kind === 'live car') return `${zoneName(zone)} (live car)`;
  if (zone.live === null) return zone.target;
  return `${zone.target}, later ${zoneName({ kind: 'live car', ...zone.live })} (live car)`;
}

function firstOfDayText({ firstOfDayReps }: PracticePlan): string {
  if (firstOfDayReps === 0) return 'none';
  return `${counted(firstOfDayReps)} without a target, 24 h or more after the last rep`;
}

function blockText({ reps, order, vary }: PlannedBlock): string {
  return `${counted(reps)}, ${order}${vary === null ? '' : `, ${varyText(vary)}`}`;
}

function varyText({ level, releaseLength }: Vary): string {
  const part = (what: string, { from, to }: Vary['level']) =>
    from === 1 && to === 1 ? [] : [`${what} ${Math.round(100 * from)} to ${percentText(to)}`];
  return [...part('level', level), ...part('release length', releaseLength)].join(', ');
}

function feedbackText(rule: FeedbackRule, mostInARow: number): string {
  const cap = `, never more than ${mostInARow} in a row`;
  if (rule.kind === 'scheduled') return `shown by reps of the target so far${cap}`;
  const stages = rule.stages.map(({ untilRep, shownShare }) =>
    untilRep === Number.POSITIVE_INFINITY
      ? `then ${percentText(shownShare)}`
      : `${percentText(shownShare)} to rep ${untilRep}`,
  );
  const whose = rule.counted === 'practice' ? 'of a zone today' : 'of a zone so far';
  return `shown ${stages.join(', ')} ${whose}${cap}`;
}

function hardText({ hardReps: { fromLevel, most } }: PracticePlan): string {
  return `at most ${most} reps from ${percentText(fromLevel)} of full scale on`;
}

function counted(reps: number): string {
  return `${reps} ${reps === 1 ? 'rep' : 'reps'}`;
}
