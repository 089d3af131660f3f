import { printable } from '../../profile/printable.ts';
import type { ProfileProblem } from '../../profile/profile-problem.ts';
import type { LogColumn } from './log-header.ts';
import { LOG_ROLES, type LogRole, roleOfName } from './log-roles.ts';
import { unitFactor, unitsOf } from './log-units.ts';

/** A column that is read. */
export interface ChosenColumn {
  readonly role: LogRole;
  /** From 0. */
  readonly index: number;
  readonly name: string;
  readonly unit: string;
  /** From the file's unit to the kept one. */
  readonly factor: number;
  /** The name is a signal of the COVESA specification, which also defines its sign. */
  readonly defined: boolean;
}

/** The user's words about columns: by role, a name (or `#` and a number from 1) and a unit. */
export interface ColumnWish {
  readonly columns: ReadonlyMap<LogRole, string>;
  readonly units: ReadonlyMap<LogRole, string>;
}

interface Choice {
  readonly chosen: readonly ChosenColumn[];
  readonly problems: readonly ProfileProblem[];
  readonly notices: readonly string[];
}

/** Without these there is nothing to score; the others are left out with a notice where their unit is not known. */
const NEEDED: readonly LogRole[] = [
  'time',
  'distance',
  'brake-level',
  'brake-front',
  'brake-rear',
  'pedal-force',
  'speed',
];

/** Which column plays which role, by the user's word or by its name; a name that fits twice is refused. */
export function chooseColumns(
  columns: readonly LogColumn[],
  wish: ColumnWish,
  line: number,
): Choice {
  const taken = new Set([...wish.columns.values()]);
  const found = LOG_ROLES.map((role) => chooseOne(role, columns, wish, taken, line));
  return {
    chosen: found.flatMap((one) => (one !== null && 'factor' in one ? [one] : [])),
    problems: found.flatMap((one) => (one !== null && 'next' in one ? [one] : [])),
    notices: found.flatMap((one) => (one !== null && 'notice' in one ? [one.notice] : [])),
  };
}

type Found = ChosenColumn | ProfileProblem | { readonly notice: string } | null;

function chooseOne(
  role: LogRole,
  columns: readonly LogColumn[],
  wish: ColumnWish,
  taken: ReadonlySet<string>,
  line: number,
): Found {
  const wanted = wish.columns.get(role);
  const places = columns.flatMap(({ name }, i) =>
    (wanted === undefined ? fits(role, name, i, taken) : isNamed(wanted, name, i)) ? [i] : [],
  );
  const problem = (what: string, next: string): ProfileProblem => ({ line, column: 1, what, next });
  if (places.length === 0)
    return wanted === undefined
      ? null
      : problem(`there is no column ${JSON.stringify(wanted)}`, `There are ${listed(columns)}.`);
  if (places.length > 1)
    return problem(
      `${places.length} columns may be ${role}: ${places.map((i) => `#${i + 1} ${printable(columns[i]!.name)}`).join(', ')}`,
      `Choose one, such as --column ${role}=#${places[0]! + 1}`,
    );
  return withUnit(role, columns[places[0]!]!, places[0]!, wish, line);
}

function fits(role: LogRole, name: string, i: number, taken: ReadonlySet<string>): boolean {
  return roleOfName(name)?.role === role && !taken.has(name) && !taken.has(`#${i + 1}`);
}

function isNamed(wanted: string, name: string, i: number): boolean {
  return wanted === `#${i + 1}` || wanted.toLowerCase() === name.toLowerCase();
}

function withUnit(
  role: LogRole,
  column: LogColumn,
  index: number,
  wish: ColumnWish,
  line: number,
): Found {
  const named = roleOfName(column.name);
  const defined = named?.role === role && named.unit !== null;
  const unit = wish.units.get(role) ?? column.unit ?? (defined ? named.unit : null);
  const factor = unitFactor(role, unit ?? '');
  if (factor !== null) return { role, index, name: column.name, unit: unit ?? '', factor, defined };
  const name = printable(column.name);
  const what =
    unit === null
      ? `the column ${name} has no unit`
      : `the column ${name} has the unit ${JSON.stringify(printable(unit))}`;
  const next = `Say it with --unit ${role}=UNIT, one of ${unitsOf(role).join(', ')}.`;
  if (NEEDED.includes(role) || wish.units.has(role)) return { line, column: 1, what, next };
  return { notice: `${what} and is left out. ${next}` };
}

/** Names of columns for a message. */
export function listed(columns: readonly LogColumn[]): string {
  return columns
    .map(({ name }, i) => `#${i + 1} ${printable(name)}`)
    .slice(0, 40)
    .join(', ');
}
