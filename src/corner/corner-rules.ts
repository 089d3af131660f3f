import type { BrokenRule } from '../profile/broken-rule.ts';
import type { ProfilePath } from '../profile/profile-text.ts';
import { degreesFromRadians } from '../units.ts';
import { apexM } from './apex.ts';
import type { CornerFile, GearsFile, LineFile } from './corner-file.ts';
import { type LineKind, missingTurnRad, pathOfLine } from './line.ts';
import { lineOfFile } from './sheet-of-file.ts';

/** What no schema can say: how the values of one sheet have to fit each other. Empty for a sound sheet. */
export function brokenRules(file: CornerFile): readonly BrokenRule[] {
  const line = lineRules(file);
  return [
    ...line,
    ...roadRules(file),
    ...gearRules(file.gears, ['gears']),
    ...(line.length > 0 ? [] : bumpRules(file)),
    ...variantRules(file),
    ...callRules(file),
  ];
}

type LineKey = keyof LineFile;

/** Keys that a kind of line has beside those that all have; each of them is required, but for the first arc. */
const OWN_KEYS: Readonly<Record<LineKind, readonly LineKey[]>> = {
  'smooth-apex': [],
  clothoid: [],
  'decreasing-radius': ['first_arc_deg', 'between_length_m', 'second_radius_m'],
  'double-apex': ['first_arc_deg', 'between_length_m', 'between_radius_m', 'second_radius_m'],
  chicane: ['between_length_m', 'second_radius_m', 'second_turn_deg'],
};
const COMMON_KEYS: readonly LineKey[] = [
  'entry',
  'turn_deg',
  'radius_m',
  'entry_length_m',
  'exit_length_m',
];

function lineRules(file: CornerFile): BrokenRule[] {
  const kind = file.line.entry ?? 'smooth-apex';
  if (kind === 'constant-radius') return [constantRadius(['line', 'entry'])];
  if (file.line.entry_length_m === undefined) return [constantRadius(['line'])];
  const broken = [...keyRules(file.line, kind), ...radiusRules(file.line, kind)];
  return broken.length > 0 ? broken : turnRules(file);
}

function constantRadius(path: ProfilePath): BrokenRule {
  return {
    path,
    what: 'a line of one constant radius has no taper: its grip is all used for turning from the start',
    next: 'Use entry: smooth-apex with an entry_length_m, the metres from turn-in to the apex.',
  };
}

function keyRules(line: LineFile, kind: LineKind): BrokenRule[] {
  const own = OWN_KEYS[kind];
  const missing = own.filter((key) => key !== 'first_arc_deg' && line[key] === undefined);
  const given = Object.keys(line) as LineKey[];
  const foreign = given.filter((key) => !COMMON_KEYS.includes(key) && !own.includes(key));
  return [
    ...missing.map((key) => ({
      path: ['line'],
      what: `a ${kind} line has no ${key}`,
      next: `Add ${key}.`,
    })),
    ...foreign.map((key) => ({
      path: ['line', key],
      what: `a ${kind} line knows no ${key}`,
      next: 'Remove it, or choose the entry it belongs to.',
    })),
  ];
}

function radiusRules(line: LineFile, kind: LineKind): BrokenRule[] {
  const { radius_m: first, second_radius_m: second, between_radius_m: between } = line;
  if (second === undefined) return [];
  if (kind === 'decreasing-radius' && second > first)
    return [
      {
        path: ['line', 'second_radius_m'],
        what: 'the radius grows',
        next: `Use at most ${first}.`,
      },
    ];
  if (kind === 'double-apex' && between !== undefined && between < Math.max(first, second))
    return [
      {
        path: ['line', 'between_radius_m'],
        what: 'the line is tighter between the apexes than at them',
        next: `Use at least ${Math.max(first, second)}.`,
      },
    ];
  return [];
}

function turnRules(file: CornerFile): BrokenRule[] {
  const missing = degreesFromRadians(missingTurnRad(lineOfFile(file)));
  if (missing === 0) return [];
  return [
    {
      path: ['line', 'turn_deg'],
      what: `the transitions turn ${missing.toFixed(1)} degrees more than the line does in all`,
      next: 'Shorten them, or make the radius larger: a transition turns half its length over the radius.',
    },
  ];
}

function roadRules(file: CornerFile): BrokenRule[] {
  return (['slope', 'bank'] as const).flatMap((key) => {
    const places = (file[key] ?? []).map((value) => value.before_apex_m);
    const twin = places.findIndex((place, i) => places.indexOf(place) < i);
    if (twin < 0) return [];
    const what = `two values of the ${key} have the same place`;
    return [{ path: [key, twin], what, next: 'Keep one of them.' }];
  });
}

function gearRules(gears: GearsFile | undefined, path: ProfilePath): BrokenRule[] {
  if (gears === undefined) return [];
  const { approach, slowest, shifts_before_apex_m: shifts } = gears;
  const count = approach - slowest;
  if (count < 0)
    return [
      {
        path: [...path, 'slowest'],
        what: `gear ${slowest} at the slowest point after gear ${approach} is no downshift`,
        next: `Use at most ${approach}.`,
      },
    ];
  if (shifts === undefined) return [];
  const places = [...path, 'shifts_before_apex_m'];
  if (shifts.length !== count)
    return [
      {
        path: places,
        what: `${shifts.length} places for ${count} downshifts`,
        next: 'Give one place for each.',
      },
    ];
  const back = shifts.findIndex((place, i) => i > 0 && place >= shifts[i - 1]!);
  if (back < 0) return [];
  const next = 'List shifts in the order in which they come.';
  return [{ path: [...places, back], what: 'the shift comes before the one above it', next }];
}

/** Asked only where the line is sound. */
function bumpRules(file: CornerFile): BrokenRule[] {
  const reach = file.approach_length_m + apexM(pathOfLine(lineOfFile(file)));
  return (file.bumps ?? []).flatMap(({ before_apex_m: at }, i) =>
    at <= reach
      ? []
      : [
          {
            path: ['bumps', i, 'before_apex_m'],
            what: 'the bump lies before the approach',
            next: `Use at most ${Math.floor(reach)}, or a longer approach_length_m.`,
          },
        ],
  );
}

function variantRules(file: CornerFile): BrokenRule[] {
  const names = file.variants.map(({ variant }) => variant);
  return file.variants.flatMap(({ variant, gears }, i) => {
    const twin: BrokenRule[] =
      names.indexOf(variant) < i
        ? [
            {
              path: ['variants', i, 'variant'],
              what: `two variants are called ${variant}`,
              next: 'Give each its own name.',
            },
          ]
        : [];
    return [...twin, ...gearRules(gears, ['variants', i, 'gears'])];
  });
}

function callRules({ variants }: CornerFile): BrokenRule[] {
  const calls = variants.map(({ call }) => call);
  return calls.flatMap((call, i) =>
    call === undefined || calls.indexOf(call) === i
      ? []
      : [
          {
            path: ['variants', i, 'call'],
            what: `two variants answer to ${JSON.stringify(call)}`,
            next: 'Keep it at one of them.',
          },
        ],
  );
}
