/** What anyone has to know before strong hardware is moved to its ends. */
export const HARDWARE_CAUTION: string =
  'Caution: brake pedals take high forces and wheels can turn hard by themselves. Set both up as their maker says, ' +
  'keep thumbs outside the rim, build the force up slowly, and stop at pain.';
