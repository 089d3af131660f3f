/** A value in a report: value of report n is `start + (n * step) % span`. */
export interface FieldPlan {
  readonly usagePage: number;
  readonly usageId: number;
  /** Counted from the first byte of the report, the report id included. */
  readonly bit: number;
  readonly size: number;
  readonly start: number;
  readonly step: number;
  readonly span: number;
  /** Code of the event the kernel makes of it (linux/input-event-codes.h), null where it makes none of its own. */
  readonly absCode: number | null;
}

/** How a virtual device lays out its reports. */
export interface ReportLayout {
  readonly bytes: number;
  readonly reportId: number;
  readonly fields: readonly FieldPlan[];
  readonly counter: { readonly at: number; readonly bytes: 2 | 4 };
  /** Where the time of sending is: 32 bits of the system's monotonic clock in microseconds. */
  readonly sentUsAt: number;
}

export interface VirtualDevice {
  readonly id: string;
  readonly name: Uint8Array;
  readonly serial: string;
  readonly vendor: number;
  readonly product: number;
  /** Items in hex, USB HID 1.11, 6.2.2. */
  readonly descriptor: string;
  readonly layout: ReportLayout;
}

const hex = (...lines: string[]): string => lines.join('').replaceAll(' ', '');

const SIMULATION = 0x02;
const GENERIC_DESKTOP = 0x01;

/**
 * Three pedals and two sliders. The kernel smooths the axes of joysticks and gamepads (fuzz); of an automobile
 * simulation device it passes every value. The pointer collection inside makes it an input device at all.
 */
export const PEDALS: VirtualDevice = {
  id: 'pedals',
  name: Buffer.from('Virtual pedals'),
  serial: 'VP-0042',
  vendor: 0x1209,
  product: 0x7e01,
  descriptor: hex(
    '0502 0902 a101', // Simulation Controls, automobile simulation device, application
    '0501 0901 a100', // Generic Desktop, pointer, physical
    '0502 15 00 27 ffff0000', // 0 .. 65535
    '09c5 7510 9501 8102', // brake, 16 bits
    '26 ff0f 09c4 750c 8102', // accelerator, 12 bits, 0 .. 4095
    '09c6 8102', // clutch, 12 bits
    '0501 26 ff03 0936 0936 750a 9502 8102', // slider twice, 10 bits, 0 .. 1023
    '7504 9501 8103', // 4 bits of padding
    '0600ff 0901 27 ffffff7f 7520 8102', // vendor-defined: counter, 32 bits
    '0902 8102', // vendor-defined: time of sending, 32 bits
    'c0 c0',
  ),
  layout: {
    bytes: 16,
    reportId: 0,
    fields: [
      plan(SIMULATION, 0xc5, 0, 16, { start: 7, step: 977, span: 65_521, absCode: 10 }),
      plan(SIMULATION, 0xc4, 16, 12, { start: 5, step: 89, span: 4091, absCode: 9 }),
      plan(SIMULATION, 0xc6, 28, 12, { start: 3, step: 97, span: 4093, absCode: null }),
      plan(GENERIC_DESKTOP, 0x36, 40, 10, { start: 2, step: 13, span: 1021, absCode: null }),
      plan(GENERIC_DESKTOP, 0x36, 50, 10, { start: 4, step: 17, span: 1019, absCode: null }),
    ],
    counter: { at: 8, bytes: 4 },
    sentUsAt: 12,
  },
};

/** A wheel with numbered reports and a signed axis; a multi-axis controller, so that the kernel smooths nothing. */
export const WHEEL: VirtualDevice = {
  id: 'wheel',
  name: Buffer.from('Virtual wheel'),
  serial: 'VW-0007',
  vendor: 0x1209,
  product: 0x7e02,
  descriptor: hex(
    '0501 0908 a101 8501', // Generic Desktop, multi-axis controller, application, report id 1
    '0930 16 0180 26 ff7f 7510 9501 8102', // X, 16 bits, -32767 .. 32767
    '0509 1901 2908 1500 2501 7501 9508 8102', // buttons 1 to 8
    '0600ff 0901 27 ffff0000 7510 9501 8102', // vendor-defined: counter, 16 bits
    '0902 27 ffffff7f 7520 8102', // vendor-defined: time of sending, 32 bits
    'c0',
  ),
  layout: {
    bytes: 10,
    reportId: 1,
    fields: [
      plan(GENERIC_DESKTOP, 0x30, 8, 16, { start: -32_767, step: 1223, span: 65_521, absCode: 0 }),
    ],
    counter: { at: 4, bytes: 2 },
    sentUsAt: 6,
  },
};

function plan(
  usagePage: number,
  usageId: number,
  bit: number,
  size: number,
  values: Pick<FieldPlan, 'start' | 'step' | 'span' | 'absCode'>,
): FieldPlan {
  return { usagePage, usageId, bit, size, ...values };
}
