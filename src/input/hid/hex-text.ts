import { Problem } from '../../problem.ts';

/** A listing as people paste it: hex digits in spaced or comma-separated groups, with or without 0x, remarks from # on. */
const REMARK = /(#|\/\/).*$/gm;
const GAP = /[\s,]+/;

/**
 * Bytes of hex text. Groups may be set apart by spaces, commas and line ends and start with 0x; what follows # or //
 * on a line is a remark.
 * @param where the file or option, for the message
 * @throws Problem for anything but hex digits, and for a group with an odd number of them
 */
export function parseHexText(text: string, where: string): Uint8Array {
  const groups = text
    .replace(/^\uFEFF/, '')
    .replace(REMARK, '')
    .split(GAP);
  return Uint8Array.from(groups.flatMap((group) => groupBytes(group, where)));
}

function groupBytes(group: string, where: string): number[] {
  const digits = group.replace(/^0x/i, '');
  if (group !== '' && !/^[0-9a-f]+$/i.test(digits))
    throw hexProblem(`${quote(group)} is not hex`, where);
  if (digits.length % 2 !== 0)
    throw hexProblem(`odd number of hex digits in ${quote(group)}`, where);
  return (digits.match(/../g) ?? []).map((pair) => Number.parseInt(pair, 16));
}

function hexProblem(what: string, where: string): Problem {
  return new Problem(what, {
    where,
    next: 'Write two hex digits for each byte, for example `05 01 09 04`.',
  });
}

function quote(text: string): string {
  const printable = text.replace(/[^\x21-\x7e]/g, '?');
  return `"${printable.length > 24 ? `${printable.slice(0, 24)}...` : printable}"`;
}

/**
 * The bytes of a file that holds either hex text or the bytes themselves. No descriptor goes without a control byte,
 * and no text has one but tabs and line ends.
 */
export function hexTextOrBytes(file: Uint8Array, where: string): Uint8Array {
  const isText = file.every((byte) => byte >= 0x20 || (byte >= 0x09 && byte <= 0x0d));
  return isText ? parseHexText(new TextDecoder().decode(file), where) : file;
}
