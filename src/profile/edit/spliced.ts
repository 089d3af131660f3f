import { type Document, isCollection, isMap, isPair, isScalar, isSeq, type Node } from 'yaml';
import { flowText, nestedText } from './inserted-text.ts';
import type { ProfileChange } from './profile-change.ts';
import { lineEnd, lineStart, prefixOf, withoutFlowEntry } from './text-lines.ts';

type Change<Kind extends ProfileChange['kind']> = Extract<ProfileChange, { readonly kind: Kind }>;

/** The text with one change cut in; null where the layout around it is not one that this knows. */
export function spliced(text: string, document: Document, change: ProfileChange): string | null {
  switch (change.kind) {
    case 'set':
      return withValue(text, document, change);
    case 'add-key':
      return withKey(text, document, change);
    case 'add-item':
      return withItem(text, document, change);
    case 'remove':
      return without(text, document, change);
  }
}

/** Offsets of an entry of a group or of a list, from its first character to behind its last. */
interface Extent {
  readonly start: number;
  readonly end: number;
}

function withValue(text: string, document: Document, { path, value }: Change<'set'>) {
  const node = document.getIn(path, true);
  if (!isScalar(node) || !node.range) return null;
  return text.slice(0, node.range[0]) + value + text.slice(node.range[1]);
}

function withKey(text: string, document: Document, change: Change<'add-key'>): string | null {
  const map = nodeAt(document, change.path);
  if (!isMap(map)) return null;
  const behind = extentOf(
    map.items.find(({ key }) => isScalar(key) && key.value === change.after) ?? map.items.at(-1),
  );
  const first = extentOf(map.items[0]);
  if (behind === null || first === null) return null;
  const { key, value } = change;
  if (map.flow === true)
    return `${text.slice(0, behind.end)}, ${key}: ${flowText(value)}${text.slice(behind.end)}`;
  const indent = first.start - lineStart(text, first.start);
  return withLines(text, behind.end, `${' '.repeat(indent)}${nestedText(key, value, indent)}`);
}

function withItem(text: string, document: Document, change: Change<'add-item'>): string | null {
  const list = nodeAt(document, change.path);
  if (!isSeq(list)) return null;
  const isFirst = change.index === 0;
  const neighbour = list.items[isFirst ? 0 : change.index - 1] as Node | undefined;
  const beside = extentOf(neighbour);
  if (beside === null) return null;
  if (list.flow === true) {
    const at = isFirst ? beside.start : beside.end;
    const item = flowText(change.value);
    return text.slice(0, at) + (isFirst ? `${item}, ` : `, ${item}`) + text.slice(at);
  }
  const prefix = prefixOf(text, beside.start);
  if (!/^\s*- +$/.test(prefix)) return null;
  const inBlock = isCollection(neighbour) && neighbour.flow !== true;
  const item = inBlock ? blockText(change.value, prefix.length) : flowText(change.value);
  if (!isFirst) return withLines(text, beside.end, prefix + item);
  return withLines(text, lineStart(text, beside.start), prefix + item);
}

function blockText(value: Change<'add-item'>['value'], indent: number): string {
  return Object.entries(value)
    .map(([key, each]) => `${key}: ${flowText(each)}`)
    .join(`\n${' '.repeat(indent)}`);
}

function without(text: string, document: Document, { path }: Change<'remove'>): string | null {
  const parent = nodeAt(document, path.slice(0, -1));
  if (!isMap(parent) && !isSeq(parent)) return null;
  const extent = extentOf(entryOf(parent, path[path.length - 1]!));
  if (extent === null) return null;
  if (parent.flow === true) return withoutFlowEntry(text, extent.start, extent.end);
  const isWholeLine = isMap(parent) ? /^\s*$/ : /^\s*- +$/;
  if (!isWholeLine.test(prefixOf(text, extent.start))) return null;
  return text.slice(0, lineStart(text, extent.start)) + text.slice(lineEnd(text, extent.end));
}

/** New lines behind the line that holds the offset, or in front of the line that begins there. */
function withLines(text: string, offset: number, lines: string): string {
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const at = offset === lineStart(text, offset) ? offset : lineEnd(text, offset);
  const before = at > 0 && text[at - 1] !== '\n' ? eol : '';
  return text.slice(0, at) + before + lines.replaceAll('\n', eol) + eol + text.slice(at);
}

function nodeAt(document: Document, path: Change<'remove'>['path']): unknown {
  return path.length === 0 ? document.contents : document.getIn(path, true);
}

function entryOf(parent: unknown, step: string | number): unknown {
  if (isSeq(parent)) return parent.items[Number(step)];
  return isMap(parent)
    ? parent.items.find(({ key }) => isScalar(key) && key.value === step)
    : undefined;
}

function extentOf(entry: unknown): Extent | null {
  const first = isPair(entry) ? entry.key : entry;
  const last = isPair(entry) ? (entry.value ?? entry.key) : entry;
  const start = rangeOf(first)?.[0];
  const end = endOf(last);
  return start === undefined || end === null ? null : { start, end };
}

/** Behind the last character; a collection in lines ends with its last entry, not with the comments below it. */
function endOf(node: unknown): number | null {
  if (!isCollection(node) || node.flow === true) return rangeOf(node)?.[1] ?? null;
  const last = node.items.at(-1);
  return endOf(isPair(last) ? (last.value ?? last.key) : last);
}

function rangeOf(node: unknown): readonly number[] | null {
  return typeof node === 'object' && node !== null && 'range' in node && Array.isArray(node.range)
    ? node.range
    : null;
}
