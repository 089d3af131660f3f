import { Problem } from '../problem.ts';
import { LOG_ROLES, type LogRole } from '../trace/log/log-roles.ts';
import type { LogWish } from '../trace/log/log-settings.ts';
import { BRAKE_ROLES } from '../trace/log/logged-zone.ts';
import type { CommandInput, OptionSpec } from './command.ts';

/** Options that say what the file does not. */
export const WISH_OPTIONS: Readonly<Record<string, OptionSpec>> = {
  column: {
    type: 'string',
    multiple: true,
    value: 'ROLE=NAME',
    help: `which column plays a role, by name or #number; repeatable. Roles: ${LOG_ROLES.join(', ')}`,
  },
  unit: {
    type: 'string',
    multiple: true,
    value: 'ROLE=UNIT',
    help: 'unit of a role where the header says none; repeatable',
  },
  brake: { type: 'string', value: 'ROLE', help: `what is scored: ${BRAKE_ROLES.join(', ')}` },
  delimiter: { type: 'string', value: 'comma|semicolon|tab', help: 'between columns' },
  decimal: { type: 'string', value: 'point|comma', help: 'within numbers' },
  'rate-hz': { type: 'string', value: 'N', help: 'rows a second, for a log without time' },
  'steering-positive': { type: 'string', value: 'left|right', help: 'sign of the steering' },
};

/** The options as the reader takes them. @throws Problem (exit code 2) for what cannot be meant */
export function logWish({ values }: CommandInput): LogWish {
  return {
    columns: pairs(values.column, 'column'),
    units: pairs(values.unit, 'unit'),
    brake: oneOf(values.brake, 'brake', BRAKE_ROLES),
    delimiter: mapped(values.delimiter, 'delimiter', { comma: ',', semicolon: ';', tab: '\t' }),
    decimal: mapped(values.decimal, 'decimal', { point: '.', comma: ',' }),
    rateHz: positive(values['rate-hz'], 'rate-hz'),
    steeringPositive: oneOf(values['steering-positive'], 'steering-positive', ['left', 'right']),
  };
}

type Value = CommandInput['values'][string];

/** A number above 0, null where the option is not given. @throws Problem (exit code 2) for anything else */
export function positive(value: Value, option: string): number | null {
  if (value === undefined) return null;
  const number = typeof value === 'string' && value.trim() !== '' ? Number(value) : Number.NaN;
  if (number > 0 && Number.isFinite(number)) return number;
  throw wrong(`--${option} is ${JSON.stringify(value)}`, 'Give a number above 0.');
}

function pairs(value: Value, option: string): ReadonlyMap<LogRole, string> {
  const texts = Array.isArray(value) ? (value as readonly string[]) : [];
  return new Map(
    texts.map((text) => {
      const [, name, rest] = /^([^=]+)=(.+)$/.exec(text) ?? [];
      const role = LOG_ROLES.find((one) => one === name);
      if (role !== undefined && rest !== undefined) return [role, rest];
      throw wrong(
        `--${option} is ${JSON.stringify(text)}`,
        `Write ROLE=${option === 'unit' ? 'UNIT' : 'NAME'} with one of ${LOG_ROLES.join(', ')}.`,
      );
    }),
  );
}

function oneOf<T extends string>(value: Value, option: string, known: readonly T[]): T | null {
  if (value === undefined) return null;
  const found = known.find((one) => one === value);
  if (found !== undefined) return found;
  throw wrong(`--${option} is ${JSON.stringify(value)}`, `Use ${known.join(' or ')}.`);
}

function mapped<T>(value: Value, option: string, known: Readonly<Record<string, T>>): T | null {
  const name = oneOf(value, option, Object.keys(known));
  return name === null ? null : known[name]!;
}

function wrong(what: string, next: string): Problem {
  return new Problem(what, { where: 'trace', next, exitCode: 2 });
}
