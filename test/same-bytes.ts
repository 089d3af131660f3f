import { expect } from 'vitest';

/** Arrays of samples are equal at once where their bytes are; else they are compared as ever, so that a test shows where. */
expect.addEqualityTesters([
  (a, b) => {
    if (!(a instanceof Float64Array && b instanceof Float64Array)) return undefined;
    return bytesOf(a).equals(bytesOf(b)) ? true : undefined;
  },
]);

function bytesOf({ buffer, byteOffset, byteLength }: Float64Array): Buffer {
  return Buffer.from(buffer, byteOffset, byteLength);
}
