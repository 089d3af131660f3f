/**
 * The only place where SI meets the units that drivers, coaches and makers use. Every factor is exact by definition
 * (NIST SP 811, 2008, appendix B; standard gravity: 3rd CGPM, 1901) except pi.
 */

/** Standard gravity in m/s^2. */
export const STANDARD_GRAVITY_MPS2 = 9.80665;

const NEWTONS_PER_KGF = STANDARD_GRAVITY_MPS2;
/** The pound is 0.45359237 kg. */
const NEWTONS_PER_LBF = 0.45359237 * STANDARD_GRAVITY_MPS2;
const METRES_PER_INCH = 0.0254;
const PASCALS_PER_BAR = 1e5;
const PASCALS_PER_PSI = NEWTONS_PER_LBF / METRES_PER_INCH ** 2;
const KMH_PER_MPS = 3.6;
const MPS_PER_MPH = 0.44704;
const METRES_PER_FOOT = 0.3048;
const RADIANS_PER_DEGREE = Math.PI / 180;
const RADIANS_PER_TURN = 2 * Math.PI;
const SECONDS_PER_MINUTE = 60;

export const newtonsFromKgf = (kgf: number): number => kgf * NEWTONS_PER_KGF;

export const newtonsFromLbf = (lbf: number): number => lbf * NEWTONS_PER_LBF;
export const lbfFromNewtons = (newtons: number): number => newtons / NEWTONS_PER_LBF;

export const pascalsFromBar = (bar: number): number => bar * PASCALS_PER_BAR;
export const barFromPascals = (pascals: number): number => pascals / PASCALS_PER_BAR;

export const pascalsFromPsi = (psi: number): number => psi * PASCALS_PER_PSI;
export const psiFromPascals = (pascals: number): number => pascals / PASCALS_PER_PSI;

export const metresPerSecondFromKmh = (kmh: number): number => kmh / KMH_PER_MPS;
export const kmhFromMetresPerSecond = (mps: number): number => mps * KMH_PER_MPS;

export const metresPerSecondFromMph = (mph: number): number => mph * MPS_PER_MPH;
export const mphFromMetresPerSecond = (mps: number): number => mps / MPS_PER_MPH;

export const metresFromFeet = (feet: number): number => feet * METRES_PER_FOOT;
export const feetFromMetres = (metres: number): number => metres / METRES_PER_FOOT;

export const radiansFromDegrees = (degrees: number): number => degrees * RADIANS_PER_DEGREE;
export const degreesFromRadians = (radians: number): number => radians / RADIANS_PER_DEGREE;

/** Revolutions per minute. */
export const radiansPerSecondFromRpm = (rpm: number): number =>
  (rpm * RADIANS_PER_TURN) / SECONDS_PER_MINUTE;
export const rpmFromRadiansPerSecond = (radiansPerSecond: number): number =>
  (radiansPerSecond * SECONDS_PER_MINUTE) / RADIANS_PER_TURN;
