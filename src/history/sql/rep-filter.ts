import type { RepQuery } from '../store.ts';
import type { SqlValue } from './sql-driver.ts';

/** The WHERE, ORDER and LIMIT of a query on `rep JOIN practice`, newest first, with its values in order. */
export function repFilter(query: RepQuery): { readonly sql: string; readonly values: SqlValue[] } {
  const conditions: [string, SqlValue | undefined][] = [
    ['practice.driver = ?', query.driver],
    ['rep.target_id = ?', query.targetId],
    ['rep.target_version = ?', query.targetVersion],
    ['rep.corner = ?', query.corner],
    ['rep.utc_ms >= ?', query.sinceUtcMs],
    ['rep.practice_id = ?', query.practiceId],
  ];
  const given = conditions.flatMap(([sql, value]) => (value === undefined ? [] : { sql, value }));
  const where = given.map(({ sql }) => sql).join(' AND ');
  return {
    sql: `${where === '' ? '' : `WHERE ${where} `}ORDER BY rep.utc_ms DESC, rep.id DESC LIMIT ?`,
    values: [...given.map(({ value }) => value), query.limit ?? -1], // a negative limit is none
  };
}
