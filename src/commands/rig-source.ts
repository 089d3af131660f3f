import type { Observable } from 'rxjs';
import type { SourceKind } from '../history/store.ts';
import { discoverDevices, likelyRigDevices } from '../input/discovery/discover-devices.ts';
import type { FoundDevice } from '../input/discovery/found-device.ts';
import type { ReportSource } from '../input/report-source.ts';
import type { Rig } from '../input/rig/rig.ts';
import { loadRig } from '../input/rig/rig-file.ts';
import { sameDevice } from '../input/rig/same-device.ts';
import { Problem } from '../problem.ts';
import type { SourceWish } from './source-wish.ts';

/** A source opened, with the rig that says what its bytes mean. */
export interface RigSource {
  readonly kind: SourceKind;
  readonly source: ReportSource;
  readonly rig: Rig;
  /** One line for the driver on why it is not the pedals, null where it is what was asked for. */
  readonly note: string | null;
}

interface RigSourceNeeds {
  readonly dataDir: string;
  readonly seed: number;
  /** True where nobody watches and simulated sources need not wait for the clock. */
  readonly headless: boolean;
  /** From one batch of real devices to the next; the source's own by default. */
  readonly batchMs?: number;
  /** The mouse, where there is a screen. */
  readonly pointer$: Observable<number> | null;
  /** Sets devices up with the driver and returns the saved rig; null where nobody can be asked. */
  readonly setUp: ((devices: readonly FoundDevice[]) => Promise<Rig>) | null;
}

/**
 * Opens what the driver asked for; without a wish the real devices if there are any, else the virtual rig.
 * @throws Problem where that cannot be had
 */
export async function openRigSource(wish: SourceWish, needs: RigSourceNeeds): Promise<RigSource> {
  switch (wish.kind) {
    case 'virtual':
      return openVirtual(wish.driver, needs, null);
    case 'pointer':
      return openPointer(needs);
    case 'replay':
      return openReplay(wish.file, needs);
    case 'hid':
      return openDevices(await findDevices(), needs);
    case 'any':
      return openAny(needs);
  }
}

async function openAny(needs: RigSourceNeeds): Promise<RigSource> {
  let devices: FoundDevice[];
  try {
    devices = await findDevices();
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return openVirtual('club', needs, `${error.message}: the virtual driver drives. ${error.next}`);
  }
  if (devices.length > 0) return openDevices(devices, needs);
  return openVirtual(
    'club',
    needs,
    'No pedals found: the virtual driver drives. Plug them in and start again.',
  );
}

async function findDevices(): Promise<FoundDevice[]> {
  return likelyRigDevices(await discoverDevices());
}

async function openDevices(
  devices: readonly FoundDevice[],
  needs: RigSourceNeeds,
): Promise<RigSource> {
  if (devices.length === 0) {
    throw new Problem('no pedals or wheel found', {
      next: 'Plug them in, or drive the virtual rig with `--source virtual`.',
    });
  }
  const rig = (await loadRig(needs.dataDir, devices)) ?? (await setUp(devices, needs));
  const { openHidSource } = await import('../input/hid-source.ts');
  const { batchMs } = needs;
  const source = await openHidSource(
    partsOf(rig, devices),
    batchMs === undefined ? {} : { batchMs },
  );
  return { kind: 'hid', source, rig, note: null };
}

function setUp(devices: readonly FoundDevice[], { setUp }: RigSourceNeeds): Promise<Rig> {
  if (setUp !== null) return setUp(devices);
  throw new Problem(`${devices[0]?.name ?? 'the rig'} is not set up yet`, {
    next: 'Run `ebbline rig setup` once: it takes a minute.',
  });
}

/** Only devices with a part in the rig are opened: a second game controller is none of our business. */
function partsOf(rig: Rig, devices: readonly FoundDevice[]): FoundDevice[] {
  const parts = [...rig.axes, ...rig.buttons].map(({ device }) => device);
  return devices.filter(({ identity }) => parts.some((part) => sameDevice(part, identity)));
}

async function openVirtual(
  preset: 'skilled' | 'club' | 'novice',
  { seed, headless }: RigSourceNeeds,
  note: string | null,
): Promise<RigSource> {
  const { openVirtualSource } = await import('../input/virtual/open-virtual-source.ts');
  const { virtualRig } = await import('../input/virtual/virtual-rig.ts');
  const source = openVirtualSource({ preset, seed, pace: headless ? 'simulated' : 'real' });
  return { kind: 'virtual', source, rig: virtualRig(), note };
}

async function openPointer({ pointer$ }: RigSourceNeeds): Promise<RigSource> {
  if (pointer$ === null) {
    throw new Problem('the mouse is a pedal only on the screen', {
      where: '--source pointer',
      next: 'Leave out --headless and run it in a terminal window.',
      exitCode: 2,
    });
  }
  const { map } = await import('rxjs');
  const { openPointerSource } = await import('../input/pointer-source.ts');
  const { POINTER_RIG } = await import('../input/pointer-rig.ts');
  const source = openPointerSource(pointer$.pipe(map((fraction) => ({ fraction }))));
  return { kind: 'pointer', source, rig: POINTER_RIG, note: null };
}

async function openReplay(file: string, { headless, dataDir }: RigSourceNeeds): Promise<RigSource> {
  const { openReplaySource } = await import('../input/replay-source.ts');
  const source = await openReplaySource(file, { pace: headless ? 'fast' : 'recorded' });
  const rig = source.rig ?? (await loadRig(dataDir, source.devices));
  if (rig !== null) return { kind: 'replay', source, rig, note: null };
  await source.close();
  throw new Problem('the recording does not say what its axes are', {
    where: file,
    next: 'Set the same devices up with `ebbline rig setup` and replay it again.',
  });
}
