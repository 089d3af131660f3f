import type { ProfileGroup, ProfileValue } from './profile-change.ts';

/** A value on one line. Words are names of shapes and the like, which need no quotes. */
export function flowText(value: ProfileValue): string {
  if (typeof value !== 'object') return String(value);
  if (isList(value)) return `[${value.map(flowText).join(', ')}]`;
  const pairs = Object.entries(value).map(([key, each]) => `${key}: ${flowText(each)}`);
  return `{ ${pairs.join(', ')} }`;
}

/** A key with its value, a list below it in lines. */
export function nestedText(key: string, value: ProfileValue, indent: number): string {
  if (typeof value !== 'object' || !isList(value)) return `${key}: ${flowText(value)}`;
  const dash = `\n${' '.repeat(indent + 2)}- `;
  return `${key}:${value.map((item) => dash + flowText(item)).join('')}`;
}

function isList(value: ProfileGroup | readonly ProfileGroup[]): value is readonly ProfileGroup[] {
  return Array.isArray(value);
}
