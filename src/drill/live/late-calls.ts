import { CALL_WORDS, type CallWord } from '../../corner/call-word.ts';
import type { CornerSheet, CornerVariant } from '../../corner/corner-sheet.ts';
import { seededRandom } from '../seeded-random.ts';

/** Keeps these draws apart from the others of a practice's seed. */
const STREAM = 1_000_000;

/**
 * The late call of an attempt, the same for the same seed.
 *
 * @param share share of attempts that have one
 * @param number of the attempt in its practice, from 1
 * @returns null for an attempt without
 */
export function drawCall(share: number, seed: number, number: number): CallWord | null {
  const random = seededRandom(seed, STREAM + number);
  if (random() >= share) return null;
  return CALL_WORDS[Math.floor(random() * CALL_WORDS.length)] ?? null;
}

/**
 * How the corner is driven after a call: by the sheet's variant for that word, else by what is common practice (no
 * source). The car is on its way already, so that the approach stays the one that was prepared for.
 */
export function calledVariant(
  { variants }: CornerSheet,
  prepared: CornerVariant,
  word: CallWord,
): CornerVariant {
  const called = variants.find(({ call, name }) => call === word && name !== prepared.name);
  const { approachSpeedMps, approachM, gears } = prepared;
  if (called === undefined) return changedBy(prepared, word);
  return {
    ...called,
    approachSpeedMps,
    approachM,
    gears: { ...called.gears, approach: gears.approach },
  };
}

function changedBy(variant: CornerVariant, word: CallWord): CornerVariant {
  const name = `${variant.name}, ${word}`;
  const { car, gripShare, lineFactor } = variant;
  switch (word) {
    case 'defend': // from the inside the same turn is tighter
      return { ...variant, name, lineFactor: lineFactor * 0.8 };
    case 'car inside': // room to leave, and nothing to spare for being late
      return { ...variant, name, gripShare: gripShare * 0.9 };
    case 'damp':
      return { ...variant, name, car: { ...car, gripFactor: (car.gripFactor ?? 1) * 0.85 } };
    case 'yellow': // ready to stop
      return { ...variant, name, gripShare: gripShare * 0.75 };
  }
}
