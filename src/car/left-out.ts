/** What the model of a car leaves out, and which way each omission moves a target. Shown wherever its numbers are. */
export const CAR_LEFT_OUT: readonly string[] = [
  'line delay, seal friction, flex and pad knock-back: the car answers the foot 10 to 50 ms later',
  'pitch and ride height on downforce: the front takes a little more at the hit than shown, then less',
  'left and right alike, no camber, no tyre slip: a real axle locks one wheel before the limit shown',
  'pad friction stays as it was at the start of the stop: pads that gain with heat want an earlier bleed',
  'discs cool by air alone, not by radiation: above about 400 C they are cooler than shown',
  'tyres keep their temperature over a stop: the first stops of an out-lap improve quicker than shown',
];
