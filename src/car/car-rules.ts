import type { BrokenRule } from '../profile/broken-rule.ts';
import type { ProfilePath } from '../profile/profile-text.ts';
import type { AxleBrakeFile, CarFileKeys } from './car-file.ts';

/** What no schema can say: how the values of a car file have to fit each other. Empty for a sound file. */
export function brokenCarRules(file: CarFileKeys): readonly BrokenRule[] {
  const { brakes, engine, gearbox, tyres } = file;
  return [
    ...massRules(file),
    ...axleRules(brakes.front, ['brakes', 'front']),
    ...axleRules(brakes.rear, ['brakes', 'rear']),
    ...antiLockRules(file),
    ...hybridRules(file),
    ...rising(engine.torque, ({ rpm }) => rpm, ['engine', 'torque'], 'rpm'),
    ...rising(engine.braking_torque, ({ rpm }) => rpm, ['engine', 'braking_torque'], 'rpm'),
    ...rising(
      tyres.grip_over_temperature,
      ({ tyre_c }) => tyre_c,
      ['tyres', 'grip_over_temperature'],
      'tyre_c',
    ),
    ...rising(gearbox.ratios, (ratio) => -ratio, ['gearbox', 'ratios'], null),
    ...stateRules(file),
  ];
}

function massRules({
  cg_to_rear_axle_m: toRear,
  wheelbase_m,
  fuel,
  mass_kg,
}: CarFileKeys): BrokenRule[] {
  const broken: BrokenRule[] = [];
  if (toRear >= wheelbase_m)
    broken.push({
      path: ['cg_to_rear_axle_m'],
      what: 'the centre of gravity is not between the axles',
      next: `Use less than the wheelbase of ${wheelbase_m} m.`,
    });
  if (fuel.mass_kg >= mass_kg / 2)
    broken.push({
      path: ['fuel', 'mass_kg'],
      what: 'the fuel is half the mass or more',
      next: 'mass_kg includes driver and fuel; check both.',
    });
  return broken;
}

function axleRules(brake: AxleBrakeFile, path: ProfilePath): BrokenRule[] {
  return [
    ...radiusRules(brake, path),
    ...rising(brake.pads, ({ disc_c }) => disc_c, [...path, 'pads'], 'disc_c'),
  ];
}

function radiusRules(brake: AxleBrakeFile, path: ProfilePath): BrokenRule[] {
  const { effective_radius_m, pad_inner_radius_m: inner, pad_outer_radius_m: outer } = brake;
  const rings = [inner, outer].filter((radius) => radius !== undefined).length;
  if (effective_radius_m !== undefined ? rings > 0 : rings < 2)
    return [
      {
        path,
        what: 'the radius of the pads is not given once',
        next: 'Give effective_radius_m, or pad_inner_radius_m and pad_outer_radius_m.',
      },
    ];
  if (inner === undefined || outer === undefined || inner < outer) return [];
  return [
    {
      path: [...path, 'pad_inner_radius_m'],
      what: 'the inner edge is not inside the outer one',
      next: `Use less than ${outer} m.`,
    },
  ];
}

function antiLockRules({ brakes: { anti_lock } }: CarFileKeys): BrokenRule[] {
  if (anti_lock === undefined) return [];
  return (['front', 'rear'] as const).flatMap((axle) => {
    const { release_at_use, reapply_at_use } = anti_lock[axle];
    if (reapply_at_use < release_at_use) return [];
    return [
      {
        path: ['brakes', 'anti_lock', axle, 'reapply_at_use'],
        what: 'pressure would come back before it is taken away',
        next: `Use less than release_at_use, ${release_at_use}.`,
      },
    ];
  });
}

function hybridRules({ hybrid }: CarFileKeys): BrokenRule[] {
  if (hybrid === undefined || hybrid.fade_out_kmh < hybrid.fade_from_kmh) return [];
  return [
    {
      path: ['hybrid', 'fade_out_kmh'],
      what: 'the motor is gone before it fades',
      next: `Use less than fade_from_kmh, ${hybrid.fade_from_kmh}.`,
    },
  ];
}

function stateRules({ tyres: { states } }: CarFileKeys): BrokenRule[] {
  return states.flatMap(({ name }, i) =>
    states.findIndex((other) => other.name === name) === i
      ? []
      : [
          {
            path: ['tyres', 'states', i, 'name'],
            what: 'the state is given twice',
            next: 'Keep one.',
          },
        ],
  );
}

/** Every entry has to be above the one before it. */
function rising<T>(
  list: readonly T[],
  height: (entry: T) => number,
  path: ProfilePath,
  key: string | null,
): BrokenRule[] {
  return list.flatMap((entry, i) => {
    const before = list[i - 1];
    if (before === undefined || height(entry) > height(before)) return [];
    return [
      {
        path: key === null ? [...path, i] : [...path, i, key],
        what: 'the entry is out of order',
        next:
          key === null ? 'List gears from the first up: ratios fall.' : `List by rising ${key}.`,
      },
    ];
  });
}
