import type { DeviceHealth, DrillView } from '../drill/drill-view.ts';
import type { CellGrid } from './cell-grid.ts';
import type { Look } from './look.ts';
import { remembered } from './remembered.ts';
import { isStill } from './visible-rep.ts';
import { fitText, writeText } from './write-text.ts';

/** Each device with its report rate, and the reports lost since the drill was opened. */
export function drawHealth(grid: CellGrid, row: number, view: DrillView, { theme }: Look): void {
  const { health, dropped } = view;
  const calm = dropped === 0 && health.every(({ connected }) => connected);
  const text = healthText(health, dropped, isStill(view), grid.cols);
  writeText(grid, 1, row, text, calm ? theme.quiet : theme.strong);
}

const healthText = remembered(
  (health: readonly DeviceHealth[], dropped: number, still: boolean, cols: number): string => {
    const devices = health.map((device) => deviceText(device, still, cols < 120 ? 16 : 40));
    return fitText(`reports: ${[`${dropped} dropped`, ...devices].join('  ·  ')}`, cols - 2);
  },
);

function deviceText(device: DeviceHealth, still: boolean, nameCols: number): string {
  const name = fitText(device.name, nameCols);
  if (!device.connected) return `${name} NOT CONNECTED`;
  if (device.waitingForMovement) return `${name} not moved`;
  if (device.rateHz === null) return `${name} silent`;
  return still ? `${name} live` : `${name} ${Math.round(device.rateHz)}/s`;
}
