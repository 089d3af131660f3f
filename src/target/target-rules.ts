import type { Knot } from '../curve/monotone-cubic.ts';
import type { BrokenRule } from '../profile/broken-rule.ts';
import type { ProfilePath } from '../profile/profile-text.ts';
import { phaseEnds, releaseLevel } from './level-phases.ts';
import type { TargetFile } from './target-file.ts';
import type { TargetSpec } from './target-spec.ts';

/** What no schema can say: how the values of one file have to fit each other. Empty for a sound target. */
export function brokenRules(file: TargetFile, spec: TargetSpec): readonly BrokenRule[] {
  return [
    ...lengthRules(spec),
    ...bleedRules(spec),
    ...releaseRules(spec),
    ...speedRules(file, spec),
    ...turnRules(spec),
    ...steeringRules(spec),
    ...gearRules(spec),
    ...corridorRules(spec),
    ...fullScaleRules(file),
  ];
}

function lengthRules({ phases, axis }: TargetSpec): BrokenRule[] {
  if (axis.domain === 'time' || phases.release.length > 0) return [];
  const before = axis.brakePointM - phaseEnds(phases).bleed;
  return [
    {
      path: ['release'],
      what: `nothing is left for the release: it starts ${before.toFixed(1)} m before the slowest point`,
      next: 'Move brake_point_m back or shorten what comes before the release.',
    },
  ];
}

function bleedRules({ phases: { bleed, peakLevel } }: TargetSpec): BrokenRule[] {
  if (bleed === null || (bleed.toLevel > 0 && bleed.toLevel < peakLevel)) return [];
  return [
    {
      path: ['bleed', 'to_level'],
      what: `the bleed ends at ${bleed.toLevel}`,
      next: `Use a level above 0 and below the peak of ${peakLevel}.`,
    },
  ];
}

function releaseRules({ phases }: TargetSpec): BrokenRule[] {
  const { shape, length } = phases.release;
  if (!(length > 0)) return [];
  if (shape.kind === 'two-stage')
    return knotRules([shape.corner], releaseLevel(phases), ['release', 'corner'], false);
  if (shape.kind === 'knots')
    return knotRules(shape.knots, releaseLevel(phases), ['release', 'knots'], true);
  return [];
}

function knotRules(
  knots: readonly Knot[],
  plateau: number,
  path: ProfilePath,
  listed: boolean,
): BrokenRule[] {
  const broken: BrokenRule[] = [];
  let before: Knot = { x: 0, y: 1 };
  knots.forEach((knot, i) => {
    const here = listed ? [...path, i] : path;
    if (!(knot.x > before.x && knot.x < 1))
      broken.push({
        path: here,
        what: 'the knot is out of order',
        next: 'Place it after the knot before it, between start of release and brake off.',
      });
    if (!(knot.y >= 0 && knot.y <= before.y))
      broken.push({
        path: [...here, 'level'],
        what: `the level goes up to ${Number((knot.y * plateau).toPrecision(6))} during the release`,
        next: `Use at most ${Number((before.y * plateau).toPrecision(6))}.`,
      });
    before = knot;
  });
  return broken;
}

function speedRules(file: TargetFile, { axis }: TargetSpec): BrokenRule[] {
  if (axis.domain === 'time' || axis.speeds.slowestMps < axis.speeds.entryMps) return [];
  return [
    {
      path: Object.keys(file).filter((key) => key.startsWith('slowest_speed_')),
      what: 'the slowest speed is not below the entry speed',
      next: 'Braking has to take speed off; check both.',
    },
  ];
}

/** True where `a` comes before `b` on the road. */
function comesBefore({ axis }: TargetSpec, a: number, b: number): boolean {
  return axis.domain === 'time' ? a < b : a > b;
}

function turnRules(spec: TargetSpec): BrokenRule[] {
  const { turnIn, apex, axis } = spec;
  if (turnIn === null || apex === null || comesBefore(spec, turnIn, apex)) return [];
  return [
    {
      path: [axis.domain === 'time' ? 'apex_s' : 'apex_m'],
      what: 'the apex does not come after turn-in',
      next: axis.domain === 'time' ? 'Give it a later time.' : 'Give it fewer metres.',
    },
  ];
}

function steeringRules({ steering, turnIn, apex, axis }: TargetSpec): BrokenRule[] {
  if (steering === null) return [];
  if (steering.kind === 'turn' && (turnIn === null || apex === null)) {
    const unit = axis.domain === 'time' ? 's' : 'm';
    const next = `Add turn_in_${unit} and apex_${unit}.`;
    return [{ path: ['steering'], what: 'steering needs turn-in and apex', next }];
  }
  if (steering.kind === 'knots' && hasTwins(steering.knots))
    return [
      {
        path: ['steering', 'knots'],
        what: 'two steering knots have the same place',
        next: 'Keep one of them.',
      },
    ];
  return [];
}

function corridorRules({ corridor: { knots = [] } }: TargetSpec): BrokenRule[] {
  if (!hasTwins(knots)) return [];
  return [
    {
      path: ['corridor', 'knots'],
      what: 'two corridor knots have the same place',
      next: 'Keep one of them.',
    },
  ];
}

/** Among ascending knots. */
function hasTwins(knots: readonly Knot[]): boolean {
  return knots.some((knot, i) => i > 0 && knot.x === knots[i - 1]!.x);
}

function gearRules(spec: TargetSpec): BrokenRule[] {
  return spec.gears.flatMap(({ at, gear }, i) => {
    const before = spec.gears[i - 1];
    if (before === undefined) return [];
    if (!comesBefore(spec, before.at, at))
      return [
        {
          path: ['gears', i],
          what: 'the shift comes before the one above it',
          next: 'List shifts in the order in which they come.',
        },
      ];
    if (gear >= before.gear)
      return [
        {
          path: ['gears', i, 'gear'],
          what: `gear ${gear} after gear ${before.gear} is no downshift`,
          next: `Use a gear below ${before.gear}.`,
        },
      ];
    return [];
  });
}

function fullScaleRules({ full_scale: fullScale }: TargetFile): BrokenRule[] {
  const keys = Object.keys(fullScale ?? {});
  return ['pedal_force', 'pressure'].flatMap((quantity) => {
    const same = keys.filter((key) => key.startsWith(`${quantity}_`));
    if (same.length < 2) return [];
    const what = `${same.join(' and ')} say the same`;
    return [{ path: ['full_scale', same[1]!], what, next: 'Give one of them.' }];
  });
}
