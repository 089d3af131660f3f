import { buildCar } from '../car/build-car.ts';
import type { CarFile } from '../car/car-file.ts';
import { type HeatState, withHeat } from '../car/heat-state.ts';
import { buildCorner, variantOfSheet } from '../corner/build-corner.ts';
import type { CallWord } from '../corner/call-word.ts';
import type { Corner, GearPlan } from '../corner/corner.ts';
import type { CornerSheet } from '../corner/corner-sheet.ts';
import { Problem } from '../problem.ts';
import { type DerivedTarget, deriveTarget } from '../target/derive/derive-target.ts';

/** The late calls that a sheet has a variant for, in the sheet's order. */
export function callsOf({ variants }: CornerSheet): readonly CallWord[] {
  return variants.flatMap(({ call }) => call ?? []);
}

interface CallOptions {
  readonly carFile: CarFile;
  readonly sheet: CornerSheet;
  /** What the driver prepared for. */
  readonly variant: string;
  readonly word: CallWord;
  /** Of the brakes now; null as the files say. */
  readonly heat: HeatState | null;
}

/**
 * The target after a late call, the car already on its way: of the variant that answers to the word only what can change
 * in that moment, which is the grip of the road, the line, the share of grip to use and the gear of the slowest point.
 * Approach, fuel, tyres, brake balance and temperatures stay those of the variant that was prepared.
 *
 * @throws Problem where no variant answers to the word, or the target cannot be derived
 */
export function deriveAfterCall(options: CallOptions): DerivedTarget {
  const { carFile, sheet, heat } = options;
  const prepared = variantOfSheet(sheet, options.variant);
  const called = calledVariant(sheet, options.word);
  const gripFactor = called.car.gripFactor ?? prepared.car.gripFactor;
  const cold = buildCar(
    carFile,
    gripFactor === undefined ? prepared.car : { ...prepared.car, gripFactor },
  );
  const corner = afterCall(buildCorner(sheet, prepared.name), buildCorner(sheet, called.name));
  return deriveTarget(heat === null ? cold : withHeat(cold, heat), corner);
}

function calledVariant(sheet: CornerSheet, word: CallWord): CornerSheet['variants'][number] {
  const found = sheet.variants.find(({ call }) => call === word);
  if (found !== undefined) return found;
  const calls = callsOf(sheet);
  throw new Problem(`${sheet.name} has no variant for the call ${JSON.stringify(word)}`, {
    next:
      calls.length === 0
        ? `Add \`call: ${word}\` to one of its variants.`
        : `It answers to ${calls.join(', ')}; \`call: ${word}\` in a variant adds one.`,
    exitCode: 2,
  });
}

function afterCall(prepared: Corner, called: Corner): Corner {
  return {
    ...called,
    approachSpeedMps: prepared.approachSpeedMps,
    approachM: prepared.approachM,
    gripShare: Math.min(prepared.gripShare, called.gripShare),
    gears: gearsAfter(prepared.gears, called.gears),
  };
}

/** The called variant's own shift places hold only for its own approach gear. */
function gearsAfter(prepared: GearPlan, called: GearPlan): GearPlan {
  const slowest = Math.min(prepared.approach, called.slowest);
  const isSame = prepared.approach === called.approach && slowest === called.slowest;
  return { approach: prepared.approach, slowest, shiftsAtM: isSame ? called.shiftsAtM : null };
}
