import { describe, expect, test } from 'vitest';
import {
  distanceText,
  forceText,
  massText,
  pressureText,
  speedText,
  type TextUnits,
} from '../src/unit-text.ts';

// NIST SP 811, appendix B: 1 ft = 0.3048 m, 1 mi = 1609.344 m, 1 lbf = 4.448222 N, 1 psi = 6894.757 Pa,
// 1 lb = 0.45359237 kg
describe.each<[TextUnits, string[]]>([
  ['metric', ['100.0 m', '100 m', '180 km/h', '500 N', '60.0 bar', '1250 kg']],
  ['imperial', ['328 ft', '328 ft', '112 mph', '112 lbf', '870 psi', '2756 lb']],
])('in %s units', (units, texts) => {
  test('a quantity is told with its unit', () => {
    expect([
      distanceText(100, units),
      distanceText(100, units, 0),
      speedText(50, units),
      forceText(500, units),
      pressureText(6e6, units),
      massText(1250, units),
    ]).toEqual(texts);
  });

  test('nothing has no minus', () => {
    expect(distanceText(-0.01, units)).not.toContain('-');
  });
});
