import type { Omission } from './omission.ts';

/** What the model of a car leaves out, and which way that moves a target. Shown wherever its numbers are. */
export const CAR_LEFT_OUT: readonly Omission[] = [
  {
    what: 'line delay, seals, flex',
    bias: 'brake point too late',
    because: 'it answers 10 to 50 ms later',
  },
  {
    what: 'left and right apart',
    bias: 'level too high',
    because: 'the lighter wheel locks first',
  },
  {
    what: 'pitch on downforce',
    bias: 'either way',
    because: 'a dive moves it to the front axle',
  },
  {
    what: 'pad heat within a stop',
    bias: 'either way',
    because: 'gaining pads need less foot',
  },
  {
    what: 'radiation of the discs',
    bias: 'either way',
    because: 'above 400 C they cool quicker',
  },
  {
    what: 'tyre heat within a run',
    bias: 'level too low',
    because: 'an out-lap gains grip quicker',
  },
];
