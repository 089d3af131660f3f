import type { ProfilePath } from '../profile-text.ts';
import type { ProfileChange } from './profile-change.ts';

type Branch = Record<string | number, unknown>;

/** The data of a file after a change, as a copy: what the changed text has to say. */
export function changedData(data: unknown, change: ProfileChange): unknown {
  const copy = structuredClone(data);
  const { path } = change;
  const last = path[path.length - 1] as string | number;
  if (change.kind === 'set') branchAt(copy, path.slice(0, -1))[last] = change.value;
  else if (change.kind === 'add-key') branchAt(copy, path)[change.key] = change.value;
  else if (change.kind === 'add-item')
    (branchAt(copy, path) as unknown as unknown[]).splice(change.index, 0, change.value);
  else remove(branchAt(copy, path.slice(0, -1)), last);
  return copy;
}

/** True where both hold the same, whatever the order of keys. */
export function isSameData(a: unknown, b: unknown): boolean {
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [left, right] = [a as Branch, b as Branch];
  const keys = Object.keys(left);
  if (Array.isArray(a) !== Array.isArray(b) || keys.length !== Object.keys(right).length)
    return false;
  return keys.every((key) => key in right && isSameData(left[key], right[key]));
}

function branchAt(data: unknown, path: ProfilePath): Branch {
  return path.reduce<unknown>((value, step) => (value as Branch)[step], data) as Branch;
}

function remove(parent: Branch, key: string | number): void {
  if (Array.isArray(parent)) parent.splice(Number(key), 1);
  else delete parent[key];
}
