import type { CarFile } from '../car/car-file.ts';
import { daysBetween } from '../consistency/days-between.ts';
import type { CornerSheet } from '../corner/corner-sheet.ts';
import type { CircuitEvent } from '../drill/event/circuit-event.ts';
import { daysLeftText } from '../drill/event/event-words.ts';
import { sessionOf, variantIn } from '../drill/event/sessions-of.ts';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { findCar } from './car-files.ts';
import { CORNER_FILES, findCorner } from './corner-files.ts';
import { EVENT_FILES, findEvent } from './event-files.ts';
import { misuseOf } from './misuse-of.ts';
import { isPath, profileIds, readProfileText } from './profile-files.ts';

const misuse = misuseOf('brief');

/** One page holds no more. */
const MOST_CORNERS = 8;

/** A corner of a brief with the car that drives it. */
interface BriefZone {
  readonly sheet: CornerSheet;
  readonly carFile: CarFile;
  /** Null for the sheet's first. */
  readonly variant: string | null;
}

/** What a brief is about. */
export interface BriefSubject {
  readonly title: string;
  /** What the reader has to know first; empty for nothing. */
  readonly about: string;
  readonly zones: readonly BriefZone[];
  /** Null for corners by themselves. */
  readonly event: { readonly id: string; readonly date: string; readonly daysLeft: number } | null;
}

/** What the command line says beside the names; null for nothing. */
interface BriefWish {
  readonly car: string | null;
  readonly variant: string | null;
}

/**
 * What a brief is about: an event, or corners in a car.
 *
 * @param names one event, or up to eight corners
 * @param today local date of the reader
 * @throws Problem for a name of nothing, a file with problems, more corners than fit, or corners without a car
 */
export async function briefSubject(
  names: readonly string[],
  wish: BriefWish,
  today: string,
  dataDir: string,
): Promise<BriefSubject> {
  const [first] = names;
  if (first === undefined)
    throw misuse(
      'no event or corner named',
      'Name an event (`ebbline event list`), or up to eight corners with a car: `ebbline brief kiln-hairpin coil-bend --car gt`.',
    );
  if (names.length === 1 && (await isEvent(first, dataDir)))
    return eventBrief(await findEvent(first, dataDir), wish, today, dataDir);
  // Without a car it was an event that was meant.
  if (names.length === 1 && wish.car === null) await refuseUnknown(first, dataDir);
  return cornersBrief(names, wish, dataDir);
}

/** A file that is no sound event is read, and found fault with, as a corner, unless it says sessions. */
async function isEvent(name: string, dataDir: string): Promise<boolean> {
  if (isPath(name)) return /^sessions:/m.test(await readProfileText(name, 'event or corner'));
  if ((await profileIds(CORNER_FILES, dataDir)).includes(name)) return false;
  return (await profileIds(EVENT_FILES, dataDir)).includes(name);
}

async function refuseUnknown(name: string, dataDir: string): Promise<void> {
  const events = await profileIds(EVENT_FILES, dataDir);
  const corners = await profileIds(CORNER_FILES, dataDir);
  if (isPath(name) || corners.includes(name)) return;
  const close = nearest(name, [...events, ...corners]);
  throw new Problem(`there is no event or corner ${JSON.stringify(name)}`, {
    next: `${close === null ? '' : `Did you mean ${close}? `}Events are ${events.join(', ')}; corners are ${corners.join(', ')}; or give the path of a file.`,
  });
}

async function eventBrief(
  event: CircuitEvent,
  { car, variant }: BriefWish,
  today: string,
  dataDir: string,
): Promise<BriefSubject> {
  const session = sessionOf(event, null);
  const zones = await Promise.all(
    event.zones.map(async (zone) => ({
      sheet: await findCorner(zone.corner, dataDir),
      carFile: await findCar(car ?? zone.car, dataDir),
      variant: variant ?? variantIn(zone, session),
    })),
  );
  const daysLeft = daysBetween(today, event.date);
  const cars = [...new Set(zones.map(({ carFile }) => carFile.name))].join(' and ');
  return {
    title: `Brief: ${event.name}`,
    about: `${event.date}, ${daysLeftText(daysLeft)}; ${variant ?? session.session}, ${cars}.`,
    zones,
    event: { id: event.id, date: event.date, daysLeft },
  };
}

async function cornersBrief(
  names: readonly string[],
  { car, variant }: BriefWish,
  dataDir: string,
): Promise<BriefSubject> {
  if (names.length > MOST_CORNERS)
    throw misuse(`${names.length} corners do not fit on a page`, 'Name up to eight.');
  if (car === null)
    throw misuse('no car named', 'Add --car with an id or a path; `ebbline car list` lists ids.');
  const carFile = await findCar(car, dataDir);
  const sheets = await Promise.all(names.map((name) => findCorner(name, dataDir)));
  return {
    title: `Brief: ${carFile.name}`,
    about: '',
    zones: sheets.map((sheet) => ({ sheet, carFile, variant })),
    event: null,
  };
}
