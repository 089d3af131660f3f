const LOWEST_HZ = 220;
const OCTAVES = 2;

/**
 * The pitch of a brake level, in hertz: two octaves from 220 Hz at 0 to 880 Hz at 1, the same musical interval for the
 * same change of level anywhere. Levels outside 0..1 sound like the nearer end.
 */
export function pitchOfLevel(level: number): number {
  return LOWEST_HZ * 2 ** (OCTAVES * Math.min(1, Math.max(0, level)));
}
