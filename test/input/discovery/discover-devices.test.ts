import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { accessProblem } from '../../../src/input/discovery/access-problem.ts';
import {
  type DiscoveryPorts,
  discoverDevices,
  likelyRigDevices,
  setupCandidates,
} from '../../../src/input/discovery/discover-devices.ts';
import type { FoundDevice } from '../../../src/input/discovery/found-device.ts';
import { readDescriptor } from '../../../src/input/discovery/read-descriptor.ts';
import { readKernelName } from '../../../src/input/discovery/read-kernel-name.ts';
import { udevRule } from '../../../src/input/discovery/udev-rules.ts';
import type { HidRecord } from '../../../src/input/reader/hid-api.ts';

const RECORD: HidRecord = {
  vendorId: 0x1209,
  productId: 0x000a,
  path: '/dev/hidraw0',
  serialNumber: 'P-17',
  manufacturer: 'Pedal {works}',
  product: 'Three\u202e pedals',
  interface: 2,
  usagePage: 1,
  usage: 4,
};

/** Items of a report descriptor (USB HID 1.11, 6.2.2): a vendor's collection with one field. */
function vendorDevice(field: string): Uint8Array {
  return Uint8Array.from(Buffer.from(`0600ff0901a101${field}c0`.replaceAll(' ', ''), 'hex'));
}

function discover(records: HidRecord[], ports: DiscoveryPorts = {}): Promise<FoundDevice[]> {
  const hid = { records: async () => records, open: () => Promise.reject(new Error('unused')) };
  return discoverDevices({
    hid,
    readDescriptor: async () => null,
    readKernelName: async () => null,
    accessProblem: async () => null,
    ...ports,
  });
}

async function kindOf(record: HidRecord, descriptor: Uint8Array | null = null): Promise<string> {
  const found = await discover([record], { readDescriptor: async () => descriptor });
  return found[0]!.kind;
}

describe('discovery', () => {
  test('gives what is known of a device, its strings safe to print', async () => {
    const descriptor = Uint8Array.of(5, 1);
    const found = await discover([RECORD], { readDescriptor: async () => descriptor });
    expect(found).toEqual([
      {
        identity: {
          vendorId: 0x1209,
          productId: 0x000a,
          serial: 'P-17',
          interfaceNumber: 2,
          usagePage: 1,
          usage: 4,
        },
        path: '/dev/hidraw0',
        name: 'Three pedals',
        maker: 'Pedal (works)',
        descriptor,
        kind: 'rig',
        problem: null,
      },
    ]);
  });

  test('asks the kernel for the name the library lost', async () => {
    const readKernelName = async (): Promise<string> => 'P\u00e9dales {3}';
    const found = await discover([{ ...RECORD, product: undefined }], { readKernelName });
    expect(found[0]?.name).toBe('P\u00e9dales (3)');
    expect((await discover([RECORD], { readKernelName }))[0]?.name).toBe('Three pedals');
  });

  test('names a device without a name by its ids', async () => {
    const found = await discover([{ ...RECORD, product: '\u200b', manufacturer: undefined }]);
    expect(found[0]).toMatchObject({ name: 'HID device 1209:000a', maker: '' });
  });

  test('is one device a path, known by the collection that makes it part of a rig', async () => {
    const found = await discover([
      { ...RECORD, usagePage: 1, usage: 6 },
      { ...RECORD, usagePage: 2, usage: 2 },
      { ...RECORD, usagePage: 12, usage: 1 },
      { ...RECORD, path: '/dev/hidraw1' },
      { ...RECORD, path: undefined },
    ]);
    expect(
      found.map(({ path, identity: { usagePage, usage } }) => [path, usagePage, usage]),
    ).toEqual([
      ['/dev/hidraw0', 2, 2],
      ['/dev/hidraw1', 1, 4],
    ]);
  });

  test('is not told where the system names no usage', async () => {
    const found = await discover([{ ...RECORD, usagePage: undefined, usage: undefined }]);
    expect(found[0]).toMatchObject({ kind: 'other', identity: { usagePage: 0, usage: 0 } });
  });

  // Usages: USB HID Usage Tables 1.5, chapters 4 and 5.
  test.each([
    ['joystick', 1, 4, 'rig'],
    ['gamepad', 1, 5, 'rig'],
    ['multi-axis controller', 1, 8, 'rig'],
    ['automobile simulation device', 2, 2, 'rig'],
    ['flight simulation device', 2, 1, 'rig'],
    ['mouse', 1, 2, 'desk'],
    ['keyboard', 1, 6, 'desk'],
    ['touch pad', 0x0d, 5, 'desk'],
    ['consumer control', 12, 1, 'other'],
    ['vendor-defined', 0xff00, 1, 'other'],
  ])('takes a %s by its usage', async (_, usagePage, usage, kind) => {
    expect(await kindOf({ ...RECORD, usagePage, usage })).toBe(kind);
  });

  test.each([
    ['an absolute axis', '0501 0935 1500 26ff0f 7510 9501 8102', 'rig'],
    ['a brake', '0502 09c5 1500 26ff0f 7510 9501 8102', 'rig'],
    ['a relative axis', '0501 0938 1581 257f 7508 9501 8106', 'other'],
    ['a hat', '0501 0939 1500 2507 7508 9501 8142', 'other'],
    ['a button', '0509 0901 1500 2501 7508 9501 8102', 'other'],
    ['an on-off axis', '0501 0930 1500 2501 7508 9501 8102', 'other'],
    ['an array', '0501 1930 2935 1501 2506 7508 9501 8100', 'other'],
    ['nothing that can be read', 'b4', 'other'],
  ])('takes a device that does not say what it is but has %s', async (_, field, kind) => {
    const record = { ...RECORD, usagePage: 0xff00, usage: 1 };
    expect(await kindOf(record, vendorDevice(field))).toBe(kind);
    expect(await kindOf(record)).toBe('other');
  });

  test('never takes a mouse or a touch pad for its axes', async () => {
    const axis = vendorDevice('0501 0930 1500 26ff0f 7510 9501 8102');
    expect(await kindOf({ ...RECORD, usage: 2 }, axis)).toBe('desk');
    expect(await kindOf({ ...RECORD, usagePage: 0x0d, usage: 4 }, axis)).toBe('desk');
  });

  test('puts likely pedals first, and offers others for setup only where there are none', async () => {
    const mouse = { ...RECORD, path: '/dev/hidraw8', usage: 2 };
    const found = await discover([mouse, RECORD]);
    expect(found.map(({ kind }) => kind)).toEqual(['rig', 'desk']);
    expect(likelyRigDevices(found)).toEqual(found.slice(0, 1));
    expect(setupCandidates(found)).toEqual(found.slice(0, 1));
    const desk = await discover([mouse]);
    expect(likelyRigDevices(desk)).toEqual([]);
    expect(setupCandidates(desk)).toEqual(desk);
  });
});

describe('what the kernel keeps of a device', () => {
  const folder = mkdtempSync(join(tmpdir(), 'hidraw-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  function store(node: string, file: string, bytes: Uint8Array | string): void {
    mkdirSync(join(folder, node, 'device'), { recursive: true });
    writeFileSync(join(folder, node, 'device', file), bytes);
  }

  test('is its report descriptor', async () => {
    store('hidraw12', 'report_descriptor', Uint8Array.of(5, 1, 9, 4));
    expect(await readDescriptor('/dev/hidraw12', folder)).toEqual(Uint8Array.of(5, 1, 9, 4));
  });

  test('is at most 4096 bytes of descriptor', async () => {
    store('hidraw13', 'report_descriptor', new Uint8Array(5000).fill(5));
    expect((await readDescriptor('/dev/hidraw13', folder))?.length).toBe(4096);
  });

  test.each(['/dev/hidraw99', '/dev/hidraw', '/dev/../hidraw12/x', 'DevSrvsID:4294969', ''])(
    'is nothing for %j',
    async (path) => {
      expect(await readDescriptor(path, folder)).toBeNull();
    },
  );

  test('is nothing where the file is empty', async () => {
    store('hidraw14', 'report_descriptor', new Uint8Array(0));
    expect(await readDescriptor('/dev/hidraw14', folder)).toBeNull();
  });

  test('is its name', async () => {
    // As in the kernel's Documentation/hid, one key a line.
    const uevent =
      'DRIVER=hid-generic\nHID_ID=0003:00001209:00000001\nHID_NAME=P\u00e9dales 3\nHID_UNIQ=7\n';
    store('hidraw15', 'uevent', uevent);
    expect(await readKernelName('/dev/hidraw15', folder)).toBe('P\u00e9dales 3');
    store('hidraw16', 'uevent', 'DRIVER=hid-generic\n');
    expect(await readKernelName('/dev/hidraw16', folder)).toBeNull();
    expect(await readKernelName('/dev/hidraw99', folder)).toBeNull();
  });
});

describe('access to a device', () => {
  const device = {
    identity: {
      vendorId: 0x12ab,
      productId: 0x00cd,
      serial: null,
      interfaceNumber: 0,
      usagePage: 1,
      usage: 4,
    },
    name: 'Three pedals',
    path: '/dev/hidraw3',
  };
  const refuse = (code: string) => async () => {
    throw Object.assign(new Error(code), { code });
  };

  test('that is denied gives the rule for exactly this model, and where to put it', async () => {
    const problem = await accessProblem(device, refuse('EACCES'));
    expect(problem?.message).toBe('no permission to read Three pedals');
    expect(problem?.where).toBe('/dev/hidraw3');
    expect(problem?.next.split('\n')).toEqual([
      'Put this line into /etc/udev/rules.d/70-ebbline.rules:',
      '    KERNEL=="hidraw*", ATTRS{idVendor}=="12ab", ATTRS{idProduct}=="00cd", TAG+="uaccess"',
      '  then run `sudo udevadm control --reload-rules && sudo udevadm trigger` and plug it in again.',
    ]);
  });

  test('matches the name of the HID parent where there is no USB interface', () => {
    const identity = { ...device.identity, interfaceNumber: -1 };
    expect(udevRule({ identity })).toBe(
      'KERNEL=="hidraw*", KERNELS=="*:12AB:00CD.*", TAG+="uaccess"',
    );
  });

  test('is asked for reading and writing', async () => {
    const asked: unknown[] = [];
    const problem = await accessProblem(device, async (...args) => void asked.push(args));
    expect(problem).toBeNull();
    // R_OK is 4 and W_OK is 2 in POSIX.
    expect(asked).toEqual([['/dev/hidraw3', 6]]);
  });

  test('says nothing of a device that is gone, or not a file', async () => {
    expect(await accessProblem(device, refuse('ENOENT'))).toBeNull();
    expect(await accessProblem({ ...device, path: 'DevSrvsID:1' }, refuse('EACCES'))).toBeNull();
  });
});
