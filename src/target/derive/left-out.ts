import type { Omission } from '../../car/omission.ts';

/** What the model of a zone does not know, for whoever reads its numbers. */
export const LEFT_OUT: readonly Omission[] = [
  {
    what: 'line delay, seals, flex',
    bias: 'brake point too late',
    because: 'it answers 10 to 50 ms later',
  },
  {
    what: 'lag of the tyres',
    bias: 'brake point too late',
    because: 'force comes half a turn later',
  },
  {
    what: 'clutch open in a downshift',
    bias: 'brake point too late',
    because: 'no engine braking meanwhile',
  },
  {
    what: 'yaw inertia',
    bias: 'level too high',
    because: 'turning the car takes front grip at turn-in',
  },
  {
    what: 'left and right apart',
    bias: 'level too high',
    because: 'the inner wheel locks first',
  },
  {
    what: 'bumps',
    bias: 'level too high',
    because: 'told as margins, not eased in the curve',
  },
  {
    what: 'engine inertia in low gears',
    bias: 'level too low',
    because: 'it eases the driven axle',
  },
  {
    what: 'slip',
    bias: 'downshift too late',
    because: 'wheels and engine turn slower than the road',
  },
  {
    what: 'pitch on downforce',
    bias: 'either way',
    because: 'a dive moves it to the front axle',
  },
  {
    what: 'pad heat within the stop',
    bias: 'either way',
    because: 'gaining pads need less foot',
  },
  {
    what: 'tyre heat within the zone',
    bias: 'either way',
    because: 'cold ones gain, hot ones lose',
  },
  {
    what: 'wind, kerbs, camber, dust',
    bias: 'either way',
    because: 'a headwind shortens the zone',
  },
];

/** What the way out of the corner leaves out beside that: both sides of a difference err alike, but for the gears. */
export const EXIT_LEFT_OUT: readonly string[] = [
  'the way from brake to throttle: the exit is quicker than any foot',
  'a hybrid motor that pushes: its exit is slower than the car',
  'time a downshift takes on the brake: more of them look free',
  'wheelspin: a lower gear asks for a finer foot than shown',
];
