import { variantOfSheet } from '../../corner/build-corner.ts';
import type { CallWord } from '../../corner/call-word.ts';
import type { CornerSheet } from '../../corner/corner-sheet.ts';
import { callsOf } from '../../live/derive-after-call.ts';
import { seededRandom } from '../seeded-random.ts';

/** Keeps these draws apart from the others of a practice's seed. */
const STREAM = 1_000_000;

/** The calls that can come to a driver who prepared for one variant: not the one that variant answers to already. */
export function possibleCalls(sheet: CornerSheet, variant: string): readonly CallWord[] {
  const { call } = variantOfSheet(sheet, variant);
  return callsOf(sheet).filter((word) => word !== call);
}

/**
 * The late call of an attempt, the same for the same seed.
 *
 * @param calls to draw from, each as likely as the others
 * @param share share of attempts that have one
 * @param number of the attempt in its practice, from 1
 * @returns null for an attempt without
 */
export function drawCall(
  calls: readonly CallWord[],
  share: number,
  seed: number,
  number: number,
): CallWord | null {
  const random = seededRandom(seed, STREAM + number);
  if (random() >= share) return null;
  return calls[Math.floor(random() * calls.length)] ?? null;
}
