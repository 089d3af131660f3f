import { Problem } from '../problem.ts';
import type { Target } from '../target/target.ts';
import type { BrakeRole } from '../trace/log/logged-zone.ts';
import type { ImportedTrace } from '../trace/log/zone-lines.ts';
import { barFromPascals, pascalsFromBar } from '../units.ts';
import type { CommandInput, OptionSpec } from './command.ts';
import { positive } from './trace-wish.ts';

export const FULL_SCALE_OPTION: Readonly<Record<string, OptionSpec>> = {
  'full-scale': {
    type: 'string',
    value: 'N',
    help: 'brake at level 1: bar for a pressure, N for a force',
  },
};

/** `--full-scale` in the brake's kept unit; null where it is not given. */
export function givenFullScale({ values }: CommandInput, brake: BrakeRole): number | null {
  const given = positive(values['full-scale'], 'full-scale');
  return given === null || !isPressure(brake) ? given : pascalsFromBar(given);
}

/**
 * What level 1 stands for: by the option or the target. A position is a level already.
 * @throws Problem where nobody says
 */
export function fullScaleFor(given: number | null, trace: ImportedTrace, target: Target): number {
  const known = fullScaleOf(given, trace, target);
  if (known !== null) return known;
  throw unknownFullScale(trace.summary.brake, target.id, ', or in the target');
}

/** The same; null where nobody says. */
export function fullScaleOf(
  given: number | null,
  { summary: { brake } }: ImportedTrace,
  target: Target,
): number | null {
  return given ?? fullScaleOfTarget(brake, target);
}

/** What level 1 stands for where there is no target to say it. @throws Problem where nobody says */
export function fullScaleAlone(given: number | null, { name, summary }: ImportedTrace): number {
  const known = given ?? (summary.brake === 'brake-level' ? 1 : null);
  if (known !== null) return known;
  throw unknownFullScale(summary.brake, name, '');
}

function unknownFullScale(brake: BrakeRole, where: string, or: string): Problem {
  return new Problem(`nobody says how much ${brake} full scale is`, {
    where,
    next: `Say it with --full-scale ${isPressure(brake) ? 'BAR' : 'NEWTONS'}${or}.`,
  });
}

function fullScaleOfTarget(brake: BrakeRole, { fullScale }: Target): number | null {
  if (brake === 'brake-level') return 1;
  if (brake === 'pedal-force') return fullScale?.pedalForceN ?? null;
  const bar = brake === 'brake-front' ? (fullScale?.pressureBar ?? null) : null;
  return bar === null ? null : pascalsFromBar(bar);
}

/** A brake value with its unit. */
export function brakeText(brake: BrakeRole, value: number): string {
  if (brake === 'brake-level') return `${(100 * value).toFixed(0)} %`;
  return isPressure(brake) ? `${barFromPascals(value).toFixed(1)} bar` : `${value.toFixed(0)} N`;
}

function isPressure(brake: BrakeRole): boolean {
  return brake === 'brake-front' || brake === 'brake-rear';
}
