import { hex } from './hex.ts';

/** USB HID 1.11, appendix E.10: a mouse with three buttons. */
export const SPEC_MOUSE: Uint8Array = hex(
  `05 01 09 02 A1 01 09 01 A1 00 05 09 19 01 29 03 15 00 25 01 95 03 75 01 81 02 95 01 75 05 81 01
   05 01 09 30 09 31 15 81 25 7F 75 08 95 02 81 06 C0 C0`,
);

/** USB HID 1.11, appendix E.6: a keyboard with eight modifiers, five lamps and an array of six keys. */
export const SPEC_KEYBOARD: Uint8Array = hex(
  `05 01 09 06 A1 01 05 07 19 E0 29 E7 15 00 25 01 75 01 95 08 81 02 95 01 75 08 81 01
   95 05 75 01 05 08 19 01 29 05 91 02 95 01 75 03 91 01
   95 06 75 08 15 00 25 65 05 07 19 00 29 65 81 00 C0`,
);

/**
 * A wheel: X 14 bits, 14 buttons, hat 4 bits, 8 bits of padding, Y 8 bits, Rz 8 bits, 8 bits of padding. Minimum and
 * unit items without data, and a one-byte maximum of 255.
 */
export const PACKED_WHEEL: Uint8Array = hex(
  `05 01 09 04 A1 01 A1 02
   09 30 14 26 FF 3F 34 46 FF 3F 75 0E 95 01 81 02
   05 09 19 01 29 0E 14 25 01 34 45 01 75 01 95 0E 81 02
   05 01 09 39 14 25 07 34 46 3B 01 65 14 75 04 95 01 81 42 64
   75 08 95 01 81 01
   09 31 09 35 14 25 FF 34 45 FF 75 08 95 02 81 02
   75 08 95 01 81 01
   C0 C0`,
);

/** Three pedals as three sliders of 10 bits; maximum before minimum; padding of 2 bits; a stray 00 at the end. */
export const THREE_SLIDERS: Uint8Array = hex(
  `05 01 09 04 A1 01 26 FF 03 15 00 75 0A 95 03 09 36 09 36 09 36 81 02 75 02 95 01 81 03 C0 00`,
);

/** Pedals by name (accelerator, brake, clutch), 16 bits of 0..10000, unnumbered. */
export const NAMED_PEDALS: Uint8Array = hex(
  `05 01 09 04 A1 01 05 02 09 C4 09 C5 09 C6 15 00 26 10 27 75 10 95 03 81 02 C0`,
);

/** Signed 16-bit accelerator, brake and steering in report 2, buttons and a hat without the null flag in report 1. */
export const TWO_REPORTS: Uint8Array = hex(
  `05 01 09 05 A1 01
   85 01 05 09 19 01 29 10 15 00 25 01 75 01 95 10 81 02
   05 01 09 39 15 01 25 08 35 00 46 3B 01 65 14 75 04 95 01 81 02 65 00 75 04 95 01 81 01
   85 02 05 02 09 C4 09 C5 09 C8 16 01 80 26 FF 7F 75 10 95 03 81 02
   C0`,
);

/** The axis range 0..65535 stays in force for eight one-bit buttons. */
export const LEAKING_RANGE: Uint8Array = hex(
  `05 01 09 04 A1 01 15 00 27 FF FF 00 00 75 10 95 02 09 31 09 32 81 02
   05 09 19 01 29 08 75 01 95 08 81 02 C0`,
);

/** 128 buttons and nothing else. */
export const BUTTON_BOX: Uint8Array = hex(
  `05 01 09 05 A1 01 05 09 19 01 29 80 15 00 25 01 75 01 95 80 81 02 C0`,
);

/** An array of three 8-bit indices into buttons 1..12; no axis at all. */
export const ARRAY_BOX: Uint8Array = hex(
  `05 01 09 05 A1 01 05 09 19 01 29 0C 15 01 25 0C 75 08 95 03 81 40 C0`,
);

/** A force brake in newtons between push and pop, and a second top-level collection with its own report. */
export const PUSH_AND_POP: Uint8Array = hex(
  `05 01 09 04 A1 01 85 01 75 08 95 01 15 81 25 7F A4
   05 02 09 C5 35 00 46 E8 03 66 11 E1 55 04 75 10 16 01 80 26 FF 7F 81 02 B4
   09 30 81 02 C0
   05 01 09 05 A1 01 85 81 09 31 81 02 05 0F 09 70 75 08 95 04 91 02 C0`,
);

/** Every synthetic or published descriptor of this file by name, for tests that go through all of them. */
export const ALL_DESCRIPTORS: Readonly<Record<string, Uint8Array>> = {
  SPEC_MOUSE,
  SPEC_KEYBOARD,
  PACKED_WHEEL,
  THREE_SLIDERS,
  NAMED_PEDALS,
  TWO_REPORTS,
  LEAKING_RANGE,
  BUTTON_BOX,
  ARRAY_BOX,
  PUSH_AND_POP,
};
