/** What the model of a zone does not know, as lines for whoever reads its numbers. */
export const LEFT_OUT: readonly string[] = [
  'yaw inertia and the time a tyre takes to build its force',
  'kerbs, camber changes within the corner, wind',
  'tyre temperature along the zone, and pad temperature within it',
  'slip: wheels turn at the speed of the road up to the limit',
  'downforce lost to pitch and ride height',
];
