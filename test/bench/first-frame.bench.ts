import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, bench, describe } from 'vitest';
import { percentile } from '../live/recording.ts';
import { fineCpuMs } from './process-cpu.ts';
import { PseudoTerminal } from './pseudo-terminal.ts';
import { FRAME_END } from './seen-levels.ts';

/*
 * From starting the built program (`npm run build`) to the last byte of its first picture on a pseudo-terminal, against
 * Node that writes one line there: what comes on top of it is meant to be 150 ms at most. The table also has the end of
 * the program in it; the lines printed at the end have not. Work is what processors did for it until then.
 */
const MAIN = new URL('../../dist/bin/ebbline.js', import.meta.url).pathname;
const SIZE = { cols: 80, rows: 24 };
const ROUNDS = { iterations: 15, time: 0, warmupIterations: 2, warmupTime: 0 };
const FLOOR = 'bare node, one line';
const LINE = 'one line';
const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-first-frame-'));
const measured = new Map<string, { readonly wallMs: number[]; readonly workMs: number[] }>();

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
  const floor = measured.get(FLOOR);
  if (floor === undefined) return;
  for (const [name, { wallMs, workMs }] of measured) {
    const wall = `${beside(percentile(wallMs, 0.5), percentile(floor.wallMs, 0.5))} at the median`;
    const least = beside(Math.min(...wallMs), Math.min(...floor.wallMs));
    const work = beside(Math.min(...workMs), Math.min(...floor.workMs));
    process.stdout.write(`${name}: ${wall}, ${least} at least; work ${work}\n`);
  }
});

function beside(ms: number, floorMs: number): string {
  const more = (ms - floorMs).toFixed(0);
  return `${ms.toFixed(0)} ms (${more} more, ${(ms / floorMs).toFixed(2)} times)`;
}

async function round(name: string, args: readonly string[], shown: string): Promise<void> {
  // code that was kept by this command line, and not by another or by another build of the program
  const env = { XDG_CACHE_HOME: join(folder, `cache of ${name}`) };
  const terminal = new PseudoTerminal([process.execPath, ...args], SIZE, env);
  const { atUs } = await terminal.until((text) => text.includes(shown));
  const known = measured.get(name) ?? { wallMs: [], workMs: [] };
  known.workMs.push(fineCpuMs(terminal.pid));
  known.wallMs.push((atUs - terminal.startedUs) / 1000);
  measured.set(name, known);
  await terminal.close();
}

describe('the first picture', () => {
  const wait = `process.stdout.write('${LINE}'); setInterval(() => {}, 1000)`;
  bench(FLOOR, () => round(FLOOR, ['--eval', wait], LINE), ROUNDS);
  const virtual = ['--source', 'virtual:club', '--seed', '1', '--data-dir', folder];
  const drills = {
    'drill, the list of corners': ['drill', ...virtual],
    'drill hairpin': ['drill', 'hairpin', ...virtual],
    'drill of a live car': ['drill', '--corner', 'kiln-hairpin', '--car', 'prototype', ...virtual],
  };
  for (const [name, args] of Object.entries(drills))
    bench(name, () => round(name, [MAIN, ...args], FRAME_END), ROUNDS);
});
