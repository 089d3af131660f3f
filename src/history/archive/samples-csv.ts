import { csvRow } from '../../report/csv/csv-row.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { Track } from '../../trace/track.ts';
import type { RepFields } from '../kept.ts';

/** For example `samples/000012-2026-11-25-rep-3.csv`. */
export function samplesCsvName(place: number, { at, number }: RepFields): string {
  const day = new Date(at.utcMs).toISOString().slice(0, 10);
  return `samples/${String(place).padStart(6, '0')}-${day}-rep-${number}.csv`;
}

/**
 * The samples of a rep as `ebbline score --trace` reads them: a row for each time at which anything changed, the
 * brake held from row to row. Buttons and gaps have no column.
 */
export function samplesCsvText(record: RepRecord): string {
  const channels: [string, Track | null][] = [
    ['throttle', record.throttle],
    ['clutch', record.clutch],
    ['steering_deg', record.steering],
  ];
  const there = channels.flatMap(([name, track]) => (track === null ? [] : [{ name, track }]));
  const tracks = [record.brake, ...there.map(({ track }) => track)];
  const next = tracks.map(() => 0);
  const rows = [csvRow(['time_s', 'level', ...there.map(({ name }) => name)])];
  let level = 0;
  for (;;) {
    const at = Math.min(...tracks.map(({ timeS }, i) => timeS[next[i]!] ?? Infinity));
    if (at === Infinity) break;
    // several samples with one time stand in rows of one time
    const cells = tracks.map(({ timeS, value }, i) =>
      timeS[next[i]!] === at ? value[next[i]!++]! : null,
    );
    level = cells[0] ?? level;
    rows.push(csvRow([at, level, ...cells.slice(1)]));
  }
  rows.push(csvRow([record.endS, level, ...there.map(() => null)]));
  return rows.join('');
}
