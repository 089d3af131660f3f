/** Where feet and hands are: levels 0..1, degrees left positive. Changed in place, once per step. */
export interface Controls {
  brake: number;
  throttle: number;
  clutch: number;
  steeringDeg: number;
  leftPaddle: boolean;
  /** A button of the wheel with which set-up can be tried. */
  nextButton: boolean;
}

/** What the driver wants of them. */
export type Wish = Readonly<Controls>;

export const AT_REST: Wish = {
  brake: 0,
  throttle: 0,
  clutch: 0,
  steeringDeg: 0,
  leftPaddle: false,
  nextButton: false,
};

/** Fastest movements: feet from end to end in 0.1 s, hands 720 degrees a second. Common practice, no source. */
const FOOT_PER_S = 10;
const HANDS_DEG_PER_S = 720;

/** Moves the controls towards what is wanted. The brake follows at once: its plan is already a foot's. */
export function moveControls(controls: Controls, wish: Wish, stepS: number): void {
  controls.brake = wish.brake;
  controls.throttle = towards(controls.throttle, wish.throttle, FOOT_PER_S * stepS);
  controls.clutch = towards(controls.clutch, wish.clutch, FOOT_PER_S * stepS);
  controls.steeringDeg = towards(controls.steeringDeg, wish.steeringDeg, HANDS_DEG_PER_S * stepS);
  controls.leftPaddle = wish.leftPaddle;
  controls.nextButton = wish.nextButton;
}

/** Takes feet and hands off; a foot that was on the brake lifts like any other. */
export function letGo(controls: Controls, stepS: number): void {
  const brake = towards(controls.brake, 0, FOOT_PER_S * stepS);
  moveControls(controls, { ...AT_REST, brake }, stepS);
}

function towards(from: number, to: number, most: number): number {
  return Math.abs(to - from) <= most ? to : from + Math.sign(to - from) * most;
}
