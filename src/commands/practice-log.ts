import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import type { FinishedRep } from '../drill/drill-message.ts';
import { lastGear } from '../drill/last-gear.ts';
import { type SelfRating, selfRatingText } from '../drill/self-rating.ts';
import type { HistoryStore, NewNote, NewRep, PracticeStart } from '../history/store.ts';
import { liveStart } from '../live/live-start.ts';
import type { LiveZone } from '../live/live-zone.ts';
import { zonedNow } from './zoned-now.ts';

type Place = Pick<NewNote, 'car' | 'corner' | 'variant' | 'gear'>;

/** Where reps go. The practice is started with its first rep, so that looking at the screen leaves no trace. */
export class PracticeLog {
  readonly #store: HistoryStore;
  readonly #start: Omit<PracticeStart, 'startedAt'>;
  readonly #condition: string | null;
  readonly #now: () => ZonedInstant;
  #practiceId: number | null = null;
  /** Ids in the history by number in the practice. */
  readonly #ids: Map<number, number> = new Map();
  readonly #places: Map<number, Place> = new Map();
  readonly #marked: Set<number> = new Set();

  /** @param now the clock that reps are stamped by */
  constructor(
    store: HistoryStore,
    start: Omit<PracticeStart, 'startedAt'>,
    condition: string | null,
    now: () => ZonedInstant = zonedNow,
  ) {
    this.#now = now;
    this.#store = store;
    this.#start = start;
    this.#condition = condition;
  }

  /** The practice's number in the history; null before its first rep. */
  get practiceId(): number | null {
    return this.#practiceId;
  }

  /** Durable when it returns. */
  add(rep: FinishedRep): void {
    const at = this.#now();
    this.#practiceId ??= this.#store.startPractice({ ...this.#start, startedAt: at });
    const id = this.#store.addRep(this.#practiceId, {
      at,
      ...whatWasDriven(rep.zone),
      condition: rep.condition ?? this.#condition,
      targetId: rep.target.id,
      targetVersion: rep.target.version,
      targetChange: rep.targetChange,
      number: rep.number,
      block: rep.block,
      phase: rep.phase,
      order: rep.order,
      feedback: rep.feedback,
      selfRating: rep.rating && selfRatingText(rep.rating),
      voided: rep.voided,
      record: rep.record,
      outcome: rep.outcome,
    });
    this.#ids.set(rep.number, id);
    this.#places.set(rep.number, placeOf(rep));
  }

  /** Keeps what the driver said about a rep that was added. */
  rate(rep: number, rating: SelfRating): void {
    const id = this.#ids.get(rep);
    if (id !== undefined) this.#store.addSelfRating(id, selfRatingText(rating));
  }

  /** Marks a rep that was added: a note without words, once for each rep. */
  mark(rep: number): void {
    const id = this.#ids.get(rep);
    const place = this.#places.get(rep);
    if (id === undefined || place === undefined || this.#marked.has(rep)) return;
    this.#marked.add(rep);
    this.#note(id, place, '');
  }

  /** Keeps the words of a note on a rep that was added. */
  say(rep: number, text: string): void {
    const id = this.#ids.get(rep);
    const place = this.#places.get(rep);
    if (id !== undefined && place !== undefined) this.#note(id, place, text);
  }

  #note(repId: number, place: Place, text: string): void {
    const { driver } = this.#start;
    this.#store.addNote({ at: this.#now(), driver, text, ...place, repId });
  }
}

function placeOf(rep: FinishedRep): Place {
  const { car, corner, variant } = whatWasDriven(rep.zone);
  return { car, corner, variant, gear: lastGear(rep) };
}

/** Names of car, corner and variant, and what else it takes to build the zone again. */
function whatWasDriven(zone: LiveZone | null): Pick<NewRep, 'car' | 'corner' | 'variant' | 'live'> {
  if (zone === null) return { car: null, corner: null, variant: null, live: null };
  const prepared = zone.call?.before ?? zone.derived;
  return {
    car: zone.car.id,
    corner: zone.corner.id,
    variant: prepared.corner.variant,
    live: liveStart(zone),
  };
}
