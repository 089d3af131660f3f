import { cleanText } from '../../input/discovery/clean-text.ts';
import { Problem } from '../../problem.ts';
import type { HistorySnapshot } from '../kept.ts';
import type { PracticeStart } from '../store.ts';
import { PRACTICES } from './archive-format.ts';
import { archiveLines } from './archive-lines.ts';
import { canonicalJson } from './canonical-json.ts';
import { type PracticeLine, practiceShape } from './line-formats.ts';
import { DIFFERS, type MergeTally } from './merge-report.ts';
import type { Archive } from './open-archive.ts';
import type { StageOptions } from './stage-options.ts';
import { expectCount, type StagedIds, takeId } from './staged-ids.ts';

/**
 * Stages the practices that are not here yet.
 * @throws Problem (exit code 2) where it has to be said whose they are
 */
export async function stagePractices(
  archive: Archive,
  here: HistorySnapshot,
  tally: MergeTally,
  options: StageOptions,
): Promise<StagedIds> {
  const [all, refused] = [new Set<string>(), new Set<string>()];
  const drivers = new Drivers(archive, options);
  for await (const line of archiveLines<PracticeLine>(archive, PRACTICES, practiceShape)) {
    takeId(all, line.id, archive, PRACTICES);
    const { id, ...said } = line;
    const start = { ...said, driver: drivers.nameOf(said) };
    const known = here.practice(id)?.start ?? null;
    if (known !== null) drivers.refuseOtherName(said, known);
    const why = known === null ? null : conflictOf(start, known);
    if (why !== null) {
      refused.add(id);
      tally.conflict('practice', id, why);
      continue;
    }
    if (known === null) options.stage({ kind: 'practice', origin: id, start });
    drivers.take(start, known !== null);
    tally.count('practice', known === null ? 'added' : 'known');
  }
  expectCount(all, archive.manifest.counts.practices, archive, PRACTICES);
  drivers.refuseStranger(here);
  return { all, refused };
}

function conflictOf(start: PracticeStart, known: PracticeStart): string | null {
  if (canonicalJson(known) === canonicalJson(start)) return null;
  return known.driver === start.driver ? DIFFERS : 'it is of another driver here';
}

/** Whose the practices of an archive are. */
class Drivers {
  readonly #archive: Archive;
  readonly #options: StageOptions;
  readonly #names = new Set<string>();
  /** Of practices of whoever gave no name. */
  #added = 0;
  #known = 0;

  constructor(archive: Archive, options: StageOptions) {
    this.#archive = archive;
    this.#options = options;
  }

  nameOf({ driver }: PracticeStart): string {
    this.#names.add(driver);
    if (this.#options.driver !== null && this.#names.size > 1) throw severalDrivers(this.#archive);
    return this.#options.driver ?? driver;
  }

  take({ driver }: PracticeStart, isKnown: boolean): void {
    if (driver !== this.#options.unnamed) return;
    if (isKnown) this.#known++;
    else this.#added++;
  }

  /** Who was taken in under a name given here would be two drivers from now on. */
  refuseOtherName(said: PracticeStart, known: PracticeStart): void {
    if (this.#options.driver !== null || said.driver === known.driver) return;
    const [there, here] = [said.driver, known.driver].map((name) =>
      JSON.stringify(cleanText(name)),
    );
    throw new Problem(`the driver ${there} of this archive is ${here} here`, {
      where: this.#archive.path,
      next: `Say --driver ${here}: what is new joins the rest.`,
      exitCode: 2,
    });
  }

  /** Two people who never gave a name must not become one. */
  refuseStranger(here: HistorySnapshot): void {
    const { driver, unnamed } = this.#options;
    if (driver !== null || this.#added === 0 || this.#known > 0) return;
    if (here.counts({ driver: unnamed }).practices > 0) throw whose(this.#archive, unnamed);
  }
}

function severalDrivers({ path, manifest }: Archive): Problem {
  return new Problem(`the archive has ${manifest.drivers.length} drivers, --driver names one`, {
    where: path,
    next: 'Leave --driver out: they keep their names. Or have one exported alone, with `ebbline export --driver NAME`.',
    exitCode: 2,
  });
}

function whose({ path }: Archive, unnamed: string): Problem {
  return new Problem('the driver of this archive has no name, and neither has the one here', {
    where: path,
    next: `Say whose it is with --driver NAME; if it is the same person, with --driver ${unnamed}.`,
    exitCode: 2,
  });
}
