const EIGHTHS = ' ▏▎▍▌▋▊▉';

/** A bar of `width` cells filled from the left in eighths of a cell. Level 0..1, clipped. */
export function levelBar(level: number, width: number): string {
  const eighths = Math.round(Math.min(1, Math.max(0, level)) * width * 8);
  const full = eighths >> 3;
  const part = eighths & 7;
  const bar = '█'.repeat(full) + (part === 0 ? '' : EIGHTHS[part]!);
  return bar.padEnd(width, '░');
}

/**
 * A bar with straight ahead in the middle, filled towards the side the wheel is turned to. `width` is odd; an arrow
 * takes the end of the filling.
 * @param share of the widest angle shown, left positive (ISO 8855), clipped to -1..1
 */
export function steeringBar(share: number, width: number): string {
  const half = (width - 1) >> 1;
  const filled = Math.round(Math.min(1, Math.abs(share)) * half);
  const side = filled === 0 ? '' : '━'.repeat(filled - 1);
  const left = share > 0 && filled > 0 ? `◀${side}` : '';
  const right = share < 0 && filled > 0 ? `${side}▶` : '';
  return `${left.padStart(half, '░')}┼${right.padEnd(half, '░')}`;
}
