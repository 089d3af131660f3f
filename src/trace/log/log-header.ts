import { isReadUnit, isUnit } from './log-units.ts';

/** A column as the header names it. */
export interface LogColumn {
  /** As it stands in the file, without padding, quotes, a `#` and a running number in front. */
  readonly name: string;
  /** As it stands in the file; null where the header says none. */
  readonly unit: string | null;
}

const NUMBERED = /^\d+\s*[:.)_\s-]\s*(?=\p{L})/u;
const BRACKETED = /^(.*?)\s*[[({]\s*([^\])}]*?)\s*[\])}]$/;
const SUFFIXED = /^(.*?)_([^_]+)$/;

/** The columns of a header row; `units` is the row of units below it, where there is one. */
export function logColumns(
  header: readonly string[],
  units: readonly string[] | null,
): LogColumn[] {
  const bare = header.map((cell, i) => bareText(i === 0 ? cell.replace(/^\s*#\s*/, '') : cell));
  const numbered = bare.filter((name) => NUMBERED.test(name)).length;
  const named = numbered * 2 > bare.length ? bare.map((name) => name.replace(NUMBERED, '')) : bare;
  return named.map((text, i) => columnOf(text, units === null ? null : unitText(units[i] ?? '')));
}

/** True for a row whose every filled cell is a unit. */
export function isUnitRow(cells: readonly string[]): boolean {
  const filled = cells.map(unitText).filter((text) => text !== '');
  return filled.length > 0 && filled.every(isUnit);
}

function columnOf(text: string, below: string | null): LogColumn {
  const bracketed = BRACKETED.exec(text);
  if (bracketed !== null) return { name: bracketed[1]!, unit: bracketed[2]! || below };
  if (below !== null && below !== '') return { name: text, unit: below };
  const suffixed = SUFFIXED.exec(text);
  if (suffixed !== null && isReadUnit(suffixed[2]!))
    return { name: suffixed[1]!, unit: suffixed[2]! };
  return { name: text, unit: null };
}

function unitText(cell: string): string {
  return bareText(cell)
    .replace(/^#\s*/, '')
    .replace(/^[[({]\s*|\s*[\])}]$/g, '');
}

function bareText(cell: string): string {
  return cell
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .trim();
}
