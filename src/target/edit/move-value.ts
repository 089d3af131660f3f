import type { TargetFile } from '../target-file.ts';
import { DEFAULT_CORRIDOR } from '../target-spec.ts';
import type { CurvePoint } from './curve-point.ts';
import { changed, type EditOutcome, refused } from './edit-outcome.ts';

const DECIMALS = 4;

/** The level of the point, or its number, more (`by` above 0) or less. */
export function moveValue(file: TargetFile, point: CurvePoint, by: number): EditOutcome {
  const { valuePath, value, name } = point;
  if (valuePath === null || value === null)
    return refused(
      name === 'brake off'
        ? 'Brake off is at no pressure: use left and right.'
        : 'It has a place only: use left and right.',
    );
  const wanted = Number((value + by).toFixed(DECIMALS)) + 0;
  if (valuePath[0] === 'corridor') return changed([corridorChange(file, point, wanted)]);
  return changed([{ kind: 'set', path: valuePath, value: wanted }]);
}

function corridorChange({ corridor }: TargetFile, { valuePath }: CurvePoint, value: number) {
  const key = valuePath?.[1] as 'share' | 'floor_level';
  if (corridor === undefined) {
    const { floorLevel, share } = DEFAULT_CORRIDOR;
    const whole = { floor_level: floorLevel, share, [key]: value };
    return { kind: 'add-key', path: [], key: 'corridor', value: whole, after: null } as const;
  }
  if (corridor[key] !== undefined) return { kind: 'set', path: ['corridor', key], value } as const;
  return { kind: 'add-key', path: ['corridor'], key, value, after: null } as const;
}
