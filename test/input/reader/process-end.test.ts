import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { describe, expect, test } from 'vitest';
import { FakeBus } from './fake-bus.ts';

const PROGRAM = new URL('./end-while-reading.mjs', import.meta.url).pathname;
const DEVICE = { vendorId: 1, productId: 2, interface: 0, usagePage: 1, usage: 4 };
const RECORDS = [
  { ...DEVICE, path: '/dev/hidraw0' },
  { ...DEVICE, path: '/dev/hidraw1' },
];

interface End {
  readonly code: number | null;
  readonly signal: string | null;
  readonly output: string;
}

async function end(way: string, hangs: boolean = false): Promise<End> {
  const bus = new FakeBus(
    RECORDS.map((record) => ({ ...record, hangs })),
    { announces: true },
  );
  const devices = RECORDS.map(({ path }) => ({ identity: {}, path }));
  const args = [PROGRAM, way, JSON.stringify(devices), bus.hidModule];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'ignore'] });
  let output = '';
  child.stdout.on('data', (chunk: Buffer) => {
    output += chunk.toString();
  });
  const [code, signal] = await once(child, 'close');
  bus.close();
  return { code, signal, output };
}

const BOTH_CLOSED = 'closed\nclosed\n';

describe('a process that ends while its worker reads', () => {
  test.each([
    ['process.exit', 3],
    ['exception', 1],
    ['close', 0],
  ])('by %s closes the devices first', async (way, code) => {
    expect(await end(way)).toEqual({ code, signal: null, output: BOTH_CLOSED });
  });

  test('does end where a device does not close', async () => {
    expect(await end('process.exit', true)).toMatchObject({ code: null, signal: 'SIGKILL' });
    expect(await end('close', true)).toMatchObject({ code: null, signal: 'SIGKILL' });
    expect(await end('direct', true)).toMatchObject({ code: 0, signal: null });
  });
});
