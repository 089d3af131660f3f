import type { HistorySnapshot, KeptQuery } from '../kept.ts';
import { repCsvLines } from './rep-csv-lines.ts';
import { writeNewFile } from './write-new-file.ts';

/**
 * Writes the spreadsheet of an archive alone, to a new file.
 * @throws Problem where the file is there already or cannot be written
 */
export async function writeRepCsv(
  path: string,
  snapshot: HistorySnapshot,
  query: KeptQuery,
  repDone: () => void,
): Promise<void> {
  await writeNewFile(path, lines(snapshot, query, repDone));
}

function* lines(
  snapshot: HistorySnapshot,
  query: KeptQuery,
  repDone: () => void,
): Iterable<string> {
  let isHeader = true;
  for (const line of repCsvLines(snapshot, query)) {
    yield line;
    if (!isHeader) repDone();
    isHeader = false;
  }
}
