import type { BrokenRule } from '../../profile/broken-rule.ts';
import type { ProfilePath } from '../../profile/profile-text.ts';
import { PLAN_DEFAULTS } from './plan-defaults.ts';
import type { PlanFile, StageFile, ZoneFile } from './plan-file.ts';

/** What no schema can say: how the values of one plan have to fit each other. Empty for a sound plan. */
export function brokenRules(file: PlanFile): readonly BrokenRule[] {
  const zones = file.zones.flatMap((zone, i) => zoneRules(zone, ['zones', i], file));
  const checked = (file.carry_over?.zones ?? []).flatMap((zone, i) =>
    zoneRules(zone, ['carry_over', 'zones', i], file),
  );
  return [
    ...zones,
    ...twiceRules(file.zones, ['zones']),
    ...checked,
    ...carryOverRules(file),
    ...orderRules(file),
    ...varyRules(file),
    ...stageRules(file),
    ...hardRepRules(file),
    ...promotionRules(file),
    ...liveRules(file),
  ];
}

function zoneRules(zone: ZoneFile, path: ProfilePath, file: PlanFile): BrokenRule[] {
  if (zone.target === undefined) {
    if (zone.live !== undefined)
      return [broken([...path, 'live'], 'the zone has the live car already', 'Take live out.')];
    if (zone.car !== undefined) return [];
    return [broken(path, 'the corner has no car', 'Add car: the car that drives it.')];
  }
  if (zone.car !== undefined || zone.variant !== undefined) {
    const key = zone.car === undefined ? 'variant' : 'car';
    const next = 'Take it out, or name a corner in place of the target.';
    return [broken([...path, key], `a target has no ${key}`, next)];
  }
  if (zone.live === undefined || (file.promote !== undefined && path[0] === 'zones')) return [];
  const next = 'Add promote: it says when the live car is next. In a carry-over check take it out.';
  return [broken([...path, 'live'], 'nothing promotes this zone to the live car', next)];
}

/** One word for what a zone is, whatever order its keys stand in. */
function identity({ target, corner, car, variant }: ZoneFile): string {
  return JSON.stringify([target, corner, car, variant]);
}

function twiceRules(zones: readonly ZoneFile[], path: ProfilePath): BrokenRule[] {
  return zones.flatMap((zone, i) => {
    const first = zones.findIndex((other) => identity(other) === identity(zone));
    if (first === i) return [];
    const next = 'Take one of them out, or name another variant.';
    return [broken([...path, i], `the zone stands in the list twice`, next)];
  });
}

function carryOverRules({ zones, carry_over: carryOver }: PlanFile): BrokenRule[] {
  const checked = carryOver?.zones ?? [];
  const own = new Set(zones.map(identity));
  const practised = checked.flatMap((zone, i) => {
    const next = 'Name something that this plan does not practise.';
    const path = ['carry_over', 'zones', i];
    return own.has(identity(zone)) ? [broken(path, 'this zone is practised, not left', next)] : [];
  });
  return [...practised, ...twiceRules(checked, ['carry_over', 'zones'])];
}

function orderRules({ zones, blocks }: PlanFile): BrokenRule[] {
  return blocks.flatMap(({ order, reps }, i) => {
    if (order !== undefined && order !== 'blocked' && zones.length === 1)
      return [
        broken(
          ['blocks', i, 'order'],
          `one zone cannot be ${order}`,
          'Use blocked, or add a zone.',
        ),
      ];
    if (reps >= zones.length) return [];
    const what = `${reps} reps are not enough for ${zones.length} zones`;
    return [broken(['blocks', i, 'reps'], what, `Use ${zones.length} or more.`)];
  });
}

function varyRules({ zones, blocks }: PlanFile): BrokenRule[] {
  const hasTarget = zones.some(({ target }) => target !== undefined);
  return blocks.flatMap(({ vary }, i) => {
    if (vary === undefined) return [];
    const path = ['blocks', i, 'vary'];
    if (!hasTarget)
      return [broken(path, 'no zone has a target to vary', 'Add a target, or take vary out.')];
    const ranges = Object.entries(vary).filter(([, factors]) => factors[0]! > factors[1]!);
    const empty = Object.keys(vary).length === 0;
    if (empty)
      return [broken(path, 'vary says nothing', 'Add level_factor or release_length_factor.')];
    return ranges.map(([key, [from, to]]) =>
      broken([...path, key], `${from} is above ${to}`, 'Write the smaller factor first.'),
    );
  });
}

function stageRules({ feedback }: PlanFile): BrokenRule[] {
  if (feedback?.rule !== 'thinning') return [];
  const { stages } = feedback;
  return stages.flatMap((stage, i) =>
    stageRule(stage, stages[i - 1], i === stages.length - 1).map(({ path, ...words }) => ({
      path: ['feedback', 'stages', i, ...path],
      ...words,
    })),
  );
}

function stageRule(stage: StageFile, before: StageFile | undefined, isLast: boolean): BrokenRule[] {
  const { until_rep: until, shown_share: shown } = stage;
  if (isLast && until !== undefined)
    return [broken(['until_rep'], 'nothing comes after the last stage', 'Take until_rep out.')];
  if (!isLast && until === undefined)
    return [broken([], 'only the last stage has no until_rep', 'Add until_rep.')];
  if (until !== undefined && before?.until_rep !== undefined && until <= before.until_rep)
    return [
      broken(
        ['until_rep'],
        'the stage ends before it begins',
        `Use more than ${before.until_rep}.`,
      ),
    ];
  if (before === undefined || shown <= before.shown_share) return [];
  const next = `Use at most ${before.shown_share}: feedback thins out.`;
  return [broken(['shown_share'], 'more is shown than in the stage before', next)];
}

/** Tired reps are compared with tired reps only, so a plan that wants them has to say what they are. */
function hardRepRules({ hard_reps: hardReps, condition }: PlanFile): BrokenRule[] {
  const usual = PLAN_DEFAULTS.mostHardReps;
  if (hardReps?.most === undefined || hardReps.most <= usual || condition !== undefined) return [];
  const what = `${hardReps.most} hard reps tire the leg`;
  const next = `Use ${usual} or fewer, or add condition (for example late stint): such reps are compared with each other only.`;
  return [broken(['hard_reps', 'most'], what, next)];
}

function promotionRules({ promote, zones }: PlanFile): BrokenRule[] {
  if (promote === undefined) return [];
  if (!zones.some(({ target }) => target !== undefined))
    return [
      broken(
        ['promote'],
        'promotion starts with a target, and no zone has one',
        'Take promote out.',
      ),
    ];
  const { promotion } = PLAN_DEFAULTS;
  const wanted = promote.in_corridor_reps ?? promotion.inCorridorReps;
  const of = promote.of_hidden_reps ?? promotion.ofHiddenReps;
  if (wanted <= of) return [];
  const key = promote.in_corridor_reps === undefined ? 'of_hidden_reps' : 'in_corridor_reps';
  const next = key === 'of_hidden_reps' ? `Use ${wanted} or more.` : `Use ${of} or fewer.`;
  return [broken(['promote', key], `${wanted} out of ${of} hidden reps cannot be`, next)];
}

/** What only the live car knows. */
function liveRules(file: PlanFile): BrokenRule[] {
  if (file.zones.some(({ corner, live }) => corner !== undefined || live !== undefined)) return [];
  return (['stint_gap_s', 'late_call_share'] as const).flatMap((key) => {
    const next = 'Add a corner with its car, or take it out.';
    return file[key] === undefined ? [] : [broken([key], 'no zone has the live car', next)];
  });
}

function broken(path: ProfilePath, what: string, next: string): BrokenRule {
  return { path, what, next };
}
