import { setTimeout as delay } from 'node:timers/promises';
import type { Size } from '../../src/screens/cell-grid.ts';
import { BRAKE } from '../live/assigned-rig.ts';
import type { Line } from '../live/device-process.ts';
import { BARE_LOOP, LoopProcess } from '../live/loop-process.ts';
import { percentile } from '../live/recording.ts';
import { PEDALS, WHEEL } from '../live/virtual-rig.ts';
import { type DrillRig, startDrill } from './drill-rig.ts';
import { type LevelSteps, levelSteps } from './level-steps.ts';
import { cpuMs } from './process-cpu.ts';
import { PseudoTerminal } from './pseudo-terminal.ts';
import { FRAME_END, seenLevels } from './seen-levels.ts';

const BARE_ECHO = new URL('./bare-echo.mjs', import.meta.url).pathname;
/** Steps of the brake; the work of the first rounds is left out: the compiler takes its part of it while a program runs. */
interface Rounds {
  readonly steps: LevelSteps;
  readonly warmUpS: number;
}
const FLOOR: Rounds = rounds({ warmUp: 1, all: 3 });
/** The drill is a larger program: its compiler is at work for the first 50 s, of the half hour that a practice takes. */
const DRILL: Rounds = rounds({ warmUp: 4, all: 6 });
/** The pedals' other axes. */
const AT_REST: readonly Line[] = [[[0, 0]], [[0, 0]], [[0, 0]], [[0, 0]]];
export const PEDALS_HZ = 1000;
export const WHEEL_HZ = 500;
/** Reports that were sent and have not been worked off at the end. */
const REST_MS = 500;

/** What a program took for the same steps of the brake. */
export interface Costs {
  /** Share of one processor. */
  readonly load: number;
  /** From sending a level to the last byte of the frame that shows it; those that never came are left out. */
  readonly latencyMs: readonly number[];
  /** Levels that were sent. */
  readonly sent: number;
  /** Frames that changed the picture; others are not written. */
  readonly framesPerS: number;
}

function rounds({ warmUp, all }: { warmUp: number; all: number }): Rounds {
  const steps = levelSteps(all);
  return { steps, warmUpS: (warmUp * steps.lastS) / all };
}

/** The drill on both devices, drawing: six reps with what is between them. */
export async function drillCosts(rig: DrillRig, size: Size): Promise<Costs> {
  const drill = await startDrill(rig, size);
  try {
    return await shownCosts(rig, drill.terminal, size, DRILL);
  } finally {
    await drill.close();
  }
}

/** The floor of the latency: the HID library, and a line on the terminal for each level. */
export async function echoCosts(rig: DrillRig): Promise<Costs> {
  const size = { cols: 80, rows: 24 };
  const brake = { ...BRAKE, path: rig.devices[0].path, at: PEDALS.layout.fields[0]!.bit / 8 };
  const command = [process.execPath, BARE_ECHO, JSON.stringify(brake)];
  const terminal = new PseudoTerminal(command, size, rig.env);
  // It is silent until the first report.
  await rig.player.play(PEDALS, { rateHz: PEDALS_HZ, points: [[[0, BRAKE.rest]], ...AT_REST] });
  await terminal.until((text) => text.includes(FRAME_END));
  try {
    return await shownCosts(rig, terminal, size, FLOOR);
  } finally {
    await terminal.close();
  }
}

/** The floor of the work: the HID library alone on both devices. Share of one processor. */
export async function bareLoad(rig: DrillRig): Promise<number> {
  const loop = await LoopProcess.start(BARE_LOOP, rig.devices, null, rig.env);
  await delay(REST_MS);
  const { load } = await playedSteps(rig, loop.pid, FLOOR);
  await loop.finish();
  return load;
}

async function shownCosts(
  rig: DrillRig,
  terminal: PseudoTerminal,
  size: Size,
  played: Rounds,
): Promise<Costs> {
  const { steps, lastS } = played.steps;
  await delay(REST_MS);
  const before = framesIn(terminal.text);
  const { sentUs, load } = await playedSteps(rig, terminal.pid, played);
  const sent = steps.map(({ point, percent }) => ({ atUs: sentUs[point]!, percent }));
  const seen = seenLevels(terminal.written, size, sent);
  const latencyMs = sent.flatMap(({ atUs }, i) => {
    const seenUs = seen[i] ?? null;
    return seenUs === null ? [] : [(seenUs - atUs) / 1000];
  });
  const framesPerS = (framesIn(terminal.text) - before) / lastS;
  return { load, latencyMs, sent: sent.length, framesPerS };
}

function framesIn(text: string): number {
  return text.split(FRAME_END).length - 1;
}

/** Plays the steps, a wheel that turns to and fro beside them, and watches the processor time of a process. */
async function playedSteps(
  { player }: DrillRig,
  pid: number,
  { steps, warmUpS }: Rounds,
): Promise<{ readonly sentUs: readonly number[]; readonly load: number }> {
  const points = [steps.line, ...AT_REST];
  const pedals = await player.play(PEDALS, { rateHz: PEDALS_HZ, points });
  await player.play(WHEEL, { rateHz: WHEEL_HZ, points: [turning(steps.lastS)] });
  await delay(1000 * warmUpS);
  const [fromMs, workedMs] = [performance.now(), cpuMs(pid)];
  const sentUs = await pedals.finished;
  const load = (cpuMs(pid) - workedMs) / (performance.now() - fromMs);
  await delay(REST_MS);
  return { sentUs, load };
}

/** A quarter turn to the left and back, every two seconds. */
function turning(lastS: number): Line {
  return Array.from({ length: Math.floor(lastS) }, (_, s) => [s, s % 2 === 0 ? 0 : -6000]);
}

/** Median and 95th percentile. */
export function latencies({ latencyMs }: Costs): { readonly p50: number; readonly p95: number } {
  return { p50: percentile(latencyMs, 0.5), p95: percentile(latencyMs, 0.95) };
}
