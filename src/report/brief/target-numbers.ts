import { percentText } from '../../number-text.ts';
import type { DerivedTarget } from '../../target/derive/derive-target.ts';
import { forceText, speedText, type TextUnits } from '../../unit-text.ts';
import type { BriefNumber } from './brief.ts';
import { placeText } from './place-text.ts';

/** A target in five numbers: where to brake, how hard, where to let go, what is left, how slow. */
export function targetNumbers({ keys }: DerivedTarget, units: TextUnits): readonly BriefNumber[] {
  const { brakePoint, peak, startOfRelease, apex, slowest } = keys;
  return [
    { name: 'brake point', value: placeText(brakePoint.sM, units) },
    {
      name: 'peak',
      value: `${forceText(peak.pedalForceN, units)} (${percentText(peak.level)} of full scale)`,
    },
    { name: 'start of release', value: placeText(startOfRelease.sM, units) },
    { name: 'level at the apex', value: percentText(apex.level) },
    { name: 'slowest speed', value: speedText(slowest.speedMps, units) },
  ];
}
