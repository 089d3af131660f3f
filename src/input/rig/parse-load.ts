import { Problem } from '../../problem.ts';
import { newtonsFromKgf, newtonsFromLbf } from '../../units.ts';

const NEWTONS_FROM: Readonly<Record<string, (value: number) => number>> = {
  n: (newtons) => newtons,
  kgf: newtonsFromKgf,
  kg: newtonsFromKgf,
  lbf: newtonsFromLbf,
  lb: newtonsFromLbf,
};

/**
 * Reads a load such as `250N`, `20kgf` or `45 lbf` as newtons. `kg` and `lb` are taken as the weight of that mass, which
 * is what stands on the pedal.
 * @throws Problem (wrong usage) for a number without unit, an unknown unit or a load below zero.
 */
export function parseLoad(text: string): number {
  const [, number = '', unit = ''] = /^\s*(\d+(?:\.\d+)?)\s*([a-z]+)\s*$/i.exec(text) ?? [];
  const newtonsFrom = NEWTONS_FROM[unit.toLowerCase()];
  if (newtonsFrom !== undefined) return newtonsFrom(Number(number));
  throw new Problem(`${JSON.stringify(text)} is not a load`, {
    where: '--loads',
    next: 'Write numbers with their unit, for example 100N, 10kgf or 25lbf.',
    exitCode: 2,
  });
}

/** A load as the driver wrote it. */
export interface NamedLoad {
  readonly text: string;
  readonly newtons: number;
}

/** Reads loads separated by commas, for example `0N,10kgf,20kgf`. @throws Problem as `parseLoad`. */
export function parseLoads(text: string): readonly NamedLoad[] {
  return text.split(',').map((part) => ({ text: part.trim(), newtons: parseLoad(part) }));
}
