import type { CarFile } from '../car/car-file.ts';
import type { CornerSheet } from '../corner/corner-sheet.ts';
import { zoneOf } from '../drill/live/zone-of.ts';
import { pacedIdentity } from '../drill/plan/paced-identity.ts';
import type { TargetChange } from '../drill/plan/target-change.ts';
import { variedTarget } from '../drill/plan/varied-target.ts';
import type { StoredRep } from '../history/store.ts';
import type { LiveZone } from '../live/live-zone.ts';
import { Problem } from '../problem.ts';
import { overTime } from '../target/over-time.ts';
import type { Target } from '../target/target.ts';
import { findCar } from './car-files.ts';
import { findCorner } from './corner-files.ts';
import { notInFolders } from './given-target.ts';
import { profileIds } from './profile-files.ts';
import { findTarget, TARGET_FILES } from './target-files.ts';

/** What a stored rep was driven against, built again; or why that cannot be. */
export type Rebuilt<T> =
  | { readonly kind: 'rebuilt'; readonly value: T }
  | { readonly kind: 'lost'; readonly reason: string };

/**
 * Finds again what stored reps were driven against. The history keeps a name and a version only, so the files of today
 * have to give that version: what was changed since cannot be scored again.
 */
export class StoredSubjects {
  readonly #dataDir: string;
  readonly #targets: Map<string, Promise<Rebuilt<Target>>> = new Map();
  readonly #changedTargets: Map<string, Promise<Rebuilt<Target>>> = new Map();
  readonly #cars: Map<string, Promise<Rebuilt<CarFile>>> = new Map();
  readonly #corners: Map<string, Promise<Rebuilt<CornerSheet>>> = new Map();

  /** @param given targets that are not in the usual folders */
  constructor(dataDir: string, given: readonly Target[] = []) {
    this.#dataDir = dataDir;
    for (const target of given)
      this.#targets.set(target.id, Promise.resolve({ kind: 'rebuilt', value: overTime(target) }));
  }

  /** The target of a rep that was driven over time. */
  async target({ targetId, targetVersion, targetChange }: StoredRep): Promise<Rebuilt<Target>> {
    // what a plan changed is kept as `hairpin/varied` or `hairpin/paced`
    const id = targetId.split('/')[0]!;
    if (id !== targetId && targetChange === null)
      return lost('varied, from before the factors were kept with the rep');
    const plain = await this.#plain(id);
    if (plain.kind === 'lost') return plain;
    const found = targetChange === null ? plain : await this.#changed(plain.value, targetChange);
    if (found.kind === 'lost') return found;
    return sameVersion(found, found.value.version, targetVersion, `target ${id}`);
  }

  async #plain(id: string): Promise<Rebuilt<Target>> {
    const ids = this.#targets.has(id) ? [id] : await profileIds(TARGET_FILES, this.#dataDir);
    if (ids.includes(id))
      return known(this.#targets, id, async () => overTime(await findTarget(id, this.#dataDir)));
    const gone = lost(notInFolders(id));
    this.#targets.set(id, Promise.resolve(gone));
    return gone;
  }

  /** One object for all reps of a change, so that its reference is computed once. */
  #changed(plain: Target, change: TargetChange): Promise<Rebuilt<Target>> {
    const key = `${plain.version} ${JSON.stringify(change)}`;
    return known(this.#changedTargets, key, async () =>
      change.kind === 'varied' ? variedTarget(plain, change) : pacedIdentity(plain),
    );
  }

  /**
   * The zone of a rep that was driven with the live car; lost for any other.
   *
   * @param brakes as hot as the rep began, or as the car file has them
   */
  async zone(
    rep: StoredRep,
    brakes: 'as driven' | 'cold' = 'as driven',
  ): Promise<Rebuilt<LiveZone>> {
    const { live, variant } = rep;
    if (live === null || rep.car === null || rep.corner === null || variant === null)
      return lost('driven over time, without a car');
    const [carId, cornerId] = [rep.car, rep.corner];
    const car = await known(this.#cars, carId, () => findCar(carId, this.#dataDir));
    const corner = await known(this.#corners, cornerId, () => findCorner(cornerId, this.#dataDir));
    if (car.kind === 'lost') return car;
    if (corner.kind === 'lost') return corner;
    const plan = {
      car: car.value,
      sheet: corner.value,
      variant,
      controls: live.controls,
      stintS: null,
      callShare: 0,
      notes: [],
    };
    const { discC, padC, call } = live;
    const heat = brakes === 'cold' ? null : { discC, padC };
    const zone = await rebuilt(async () => zoneOf(plan, heat, call));
    if (zone.kind === 'lost') return zone;
    const what = `car ${carId} or corner ${cornerId}`;
    return sameVersion(zone, zone.value.target.version, rep.targetVersion, what);
  }
}

function known<T>(
  cache: Map<string, Promise<Rebuilt<T>>>,
  id: string,
  find: () => Promise<T>,
): Promise<Rebuilt<T>> {
  const before = cache.get(id);
  if (before !== undefined) return before;
  const found = rebuilt(find);
  cache.set(id, found);
  return found;
}

/** A file that is missing or wrong loses its own reps only. */
async function rebuilt<T>(build: () => Promise<T>): Promise<Rebuilt<T>> {
  try {
    return { kind: 'rebuilt', value: await build() };
  } catch (error) {
    if (error instanceof Problem) return lost(error.message);
    throw error;
  }
}

function sameVersion<T>(
  found: Rebuilt<T>,
  version: string,
  stored: string,
  what: string,
): Rebuilt<T> {
  return version === stored ? found : lost(`${what} has been changed since it was driven`);
}

const lost = (reason: string): { readonly kind: 'lost'; readonly reason: string } => ({
  kind: 'lost',
  reason,
});
