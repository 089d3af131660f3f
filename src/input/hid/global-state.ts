import { type DescriptorItem, signedValue } from './descriptor-item.ts';

/**
 * The global items in force (USB HID 1.11, 6.2.2.7), all but the report id. Ranges stay items until a main item needs
 * them: whether a maximum is signed depends on the minimum, which may come later.
 */
export interface GlobalState {
  readonly usagePage: number;
  readonly logicalMin: DescriptorItem | null;
  readonly logicalMax: DescriptorItem | null;
  readonly physicalMin: DescriptorItem | null;
  readonly physicalMax: DescriptorItem | null;
  readonly unitExponent: number;
  readonly unit: number;
  readonly reportSize: number;
  readonly reportCount: number;
}

export const INITIAL_GLOBALS: GlobalState = {
  usagePage: 0,
  logicalMin: null,
  logicalMax: null,
  physicalMin: null,
  physicalMax: null,
  unitExponent: 0,
  unit: 0,
  reportSize: 0,
  reportCount: 0,
};

/** The state after a global item, or null for a tag that is not one of a value (report id, push, pop, reserved). */
export function withGlobalItem(state: GlobalState, item: DescriptorItem): GlobalState | null {
  switch (item.tag) {
    case 0x0:
      return { ...state, usagePage: item.value % 0x10000 };
    case 0x1:
      return { ...state, logicalMin: item };
    case 0x2:
      return { ...state, logicalMax: item };
    case 0x3:
      return { ...state, physicalMin: item };
    case 0x4:
      return { ...state, physicalMax: item };
    case 0x5:
      return { ...state, unitExponent: exponentOf(item) };
    case 0x6:
      return { ...state, unit: item.value };
    case 0x7:
      return { ...state, reportSize: item.value };
    case 0x9:
      return { ...state, reportCount: item.value };
    default:
      return null;
  }
}

/** The exponent is a signed nibble (6.2.2.7); some devices write a whole signed byte instead. */
function exponentOf(item: DescriptorItem): number {
  if (item.value > 15) return signedValue(item);
  return item.value > 7 ? item.value - 16 : item.value;
}
