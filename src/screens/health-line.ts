import type { DeviceHealth, DrillView } from '../drill/drill-view.ts';
import type { CellGrid } from './cell-grid.ts';
import type { Look } from './look.ts';
import { isStill } from './visible-rep.ts';
import { fitText, writeText } from './write-text.ts';

/** Each device with its report rate, and the reports lost since the drill was opened. */
export function drawHealth(grid: CellGrid, row: number, view: DrillView, { theme }: Look): void {
  const still = isStill(view);
  const devices = view.health.map((device) => deviceText(device, still, grid.cols < 120 ? 16 : 40));
  const dropped = `${view.dropped} dropped`;
  const calm = view.dropped === 0 && view.health.every(({ connected }) => connected);
  const text = fitText(`reports: ${[dropped, ...devices].join('  ·  ')}`, grid.cols - 2);
  writeText(grid, 1, row, text, calm ? theme.quiet : theme.strong);
}

function deviceText(device: DeviceHealth, still: boolean, nameCols: number): string {
  const name = fitText(device.name, nameCols);
  if (!device.connected) return `${name} NOT CONNECTED`;
  if (device.waitingForMovement) return `${name} not moved`;
  if (device.rateHz === null) return `${name} silent`;
  return still ? `${name} live` : `${name} ${Math.round(device.rateHz)}/s`;
}
