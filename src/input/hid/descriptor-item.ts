type ItemKind = 'main' | 'global' | 'local' | 'reserved';

/** One short item of a report descriptor (USB HID 1.11, 6.2.2.2). */
export interface DescriptorItem {
  /** Byte offset of the prefix. */
  readonly at: number;
  readonly kind: ItemKind;
  readonly tag: number;
  /** Data bytes: 0, 1, 2 or 4. No data means the value 0. */
  readonly size: number;
  /** The data as an unsigned little-endian number. */
  readonly value: number;
}

const KINDS: readonly ItemKind[] = ['main', 'global', 'local', 'reserved'];
const SIZES: readonly number[] = [0, 1, 2, 4];
const LONG_ITEM = 0xfe;

/**
 * The short items of a descriptor in order. Long items are skipped, as no tag of theirs is defined (6.2.2.3); an item
 * cut off by the end of the bytes ends the sequence.
 * @param warn receives each oddity in words
 */
export function* readItems(
  bytes: Uint8Array,
  warn: (text: string) => void,
): Generator<DescriptorItem> {
  let at = 0;
  while (at < bytes.length) {
    const prefix = bytes[at]!;
    const end = itemEnd(bytes, at);
    if (end > bytes.length) {
      warn(`the item at byte ${at} is cut off; what came before it is kept`);
      return;
    }
    if (prefix === LONG_ITEM) warn(`skipped a long item at byte ${at}`);
    else yield shortItem(bytes, at);
    at = end;
  }
}

function itemEnd(bytes: Uint8Array, at: number): number {
  const prefix = bytes[at]!;
  if (prefix !== LONG_ITEM) return at + 1 + SIZES[prefix & 3]!;
  const dataSize = bytes[at + 1];
  return dataSize === undefined ? Number.POSITIVE_INFINITY : at + 3 + dataSize;
}

function shortItem(bytes: Uint8Array, at: number): DescriptorItem {
  const prefix = bytes[at]!;
  const size = SIZES[prefix & 3]!;
  let value = 0;
  for (let i = size; i > 0; i--) value = value * 256 + bytes[at + i]!;
  return { at, kind: KINDS[(prefix >> 2) & 3]!, tag: prefix >> 4, size, value };
}

/** The item's data as a two's complement number of the item's own size. */
export function signedValue(item: DescriptorItem): number {
  const span = 2 ** (8 * item.size);
  return item.value >= span / 2 && item.size > 0 ? item.value - span : item.value;
}
