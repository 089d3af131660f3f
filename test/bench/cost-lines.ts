import { type Costs, latencies } from './drill-costs.ts';

/** What was measured of the drill and of its floors, on the same devices in the same run. */
export interface CostTable {
  readonly bareLoad: number;
  readonly echo: Costs;
  /** By size of the terminal. */
  readonly drill: Readonly<Record<string, Costs>>;
}

/** The table in words, each figure with its relation to the floor. */
export function costLines({ bareLoad, echo, drill }: CostTable): string {
  const floor = latencies(echo);
  const head = [
    `bare loop on both devices: ${percent(bareLoad)} of a processor`,
    `bare loop that writes each level at once: ${latencyText(echo)}`,
  ];
  const lines = Object.entries(drill).flatMap(([size, costs]) => [
    `drill ${size}: ${percent(costs.load)} of a processor, ${times(costs.load / bareLoad)} the bare loop`,
    `drill ${size}: ${latencyText(costs)}, ${(latencies(costs).p95 - floor.p95).toFixed(1)} ms later than the bare loop at p95`,
    `drill ${size}: ${Math.round(costs.framesPerS)} frames a second that change the picture`,
  ]);
  return `${[...head, ...lines].join('\n')}\n`;
}

function latencyText(costs: Costs): string {
  const { p50, p95 } = latencies(costs);
  const unseen = costs.sent - costs.latencyMs.length;
  const missing = unseen === 0 ? '' : `, ${unseen} of ${costs.sent} levels never shown`;
  const longest = Math.max(...costs.latencyMs).toFixed(0);
  return `report to bytes ${p50.toFixed(1)} ms at the median, ${p95.toFixed(1)} ms at p95, ${longest} ms at most${missing}`;
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const times = (ratio: number): string => `${ratio.toFixed(1)} times`;
