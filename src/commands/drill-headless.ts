import type { BlockSummary, RepLine } from '../drill/drill-view.ts';
import { repLine } from '../drill/rep-line.ts';
import { summaryLines } from '../drill/summary-lines.ts';
import { Problem } from '../problem.ts';
import type { CommandContext } from './command.ts';
import { drillJson } from './drill-json.ts';
import { runDrill } from './drill-loop.ts';
import type { DrillOptions } from './drill-options.ts';
import { openPractice, seedOf } from './drill-practice.ts';
import { openRigSource } from './rig-source.ts';
import { findTarget } from './target-files.ts';

/** One block without a screen: a line per rep, then the block. */
export async function drillHeadless(
  options: DrillOptions,
  context: CommandContext,
): Promise<number> {
  if (options.target === null) {
    throw new Problem('no corner named', {
      where: 'drill',
      next: 'Name one, for example `ebbline drill hairpin --headless`; `ebbline target list` shows them.',
      exitCode: 2,
    });
  }
  const target = await findTarget(options.target, context.dataDir);
  const rigSource = await openRigSource(options.source, {
    dataDir: context.dataDir,
    seed: seedOf(options),
    headless: true,
    pointer$: null,
    setUp: null,
  });
  try {
    const practice = await openPractice(options, context, rigSource, target);
    try {
      for (const line of [rigSource.note, practice.store.notice]) {
        if (line !== null) context.err(`${line}\n`);
      }
      const told: { lines: RepLine[]; summary: BlockSummary | null } = { lines: [], summary: null };
      const print = (text: string): void => {
        if (!options.json) context.out(`${text}\n`);
      };
      print(`${target.name}  ${practice.source.label}`);
      await runDrill(practice.source, practice.decoder, practice.setup, {
        unattended: true,
        store: (rep) => practice.log.add(rep),
        onRep: (line) => {
          told.lines.push(line);
          print(repLine(line));
        },
        onSummary: (summary) => {
          told.summary = summary;
          for (const line of summaryLines(summary)) print(line);
        },
      });
      if (options.json) {
        const { log, driver } = practice;
        context.out(
          `${JSON.stringify(drillJson({ target, driver, practiceId: log.practiceId, ...told }))}\n`,
        );
      }
      return 0;
    } finally {
      practice.store.close();
      await practice.source.close();
    }
  } finally {
    await rigSource.source.close();
  }
}
