import { daysBetween } from '../consistency/days-between.ts';
import { localDate } from '../consistency/local-date.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { REP_TIMING } from '../drill/drill-setup.ts';
import type { CircuitEvent, EventSession } from '../drill/event/circuit-event.ts';
import { eventJson } from '../drill/event/event-json.ts';
import { shortGapText } from '../drill/event/event-warnings.ts';
import { daysLeftText, sessionText } from '../drill/event/event-words.ts';
import { shortestGapS } from '../drill/event/road-timing.ts';
import { sessionOf } from '../drill/event/sessions-of.ts';
import { wrapText } from '../screens/write-text.ts';
import { distanceText, speedText } from '../unit-text.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { drillIt } from './drill-it.ts';
import { findEvent } from './event-files.ts';
import { eventLap, type LapZone } from './event-lap.ts';
import { oneNamed } from './one-named.ts';
import { textOption } from './option-value.ts';
import { textColumns } from './text-columns.ts';
import { zonedNow } from './zoned-now.ts';

const COLS = 80;

/** Tells what an event is: the lap, its gaps, its sessions. */
export const command: Command = {
  name: 'event show',
  summary: 'the lap of an event: zones, gaps, sessions, days left',
  positionals: 'EVENT',
  options: {
    session: { type: 'string', value: 'S', help: 'whose lap (default the first but the out-lap)' },
    json: { type: 'boolean', help: 'one JSON object, defaults filled in' },
  },
  examples: ['ebbline event show sallow-fen', 'ebbline event show my-event.yaml --session race'],
  run: (input, context) => eventShow(input, context, zonedNow()),
};

/** `event show` with the time passed in. */
export async function eventShow(
  input: CommandInput,
  context: CommandContext,
  now: ZonedInstant,
): Promise<number> {
  const { values } = input;
  const named = oneNamed(input, 'event', 'event show');
  const event = await findEvent(named, context.dataDir);
  const asked = textOption(values.session);
  const session = sessionOf(event, asked);
  const lap = await eventLap(event, session, null, context.dataDir);
  const daysLeft = daysBetween(localDate(now), event.date);
  context.out(
    values.json === true
      ? `${JSON.stringify({ ...eventJson(event, daysLeft), lap: lapJson(session, lap) })}\n`
      : `${page(event, session, lap, { daysLeft, units: context.units })}${drillIt('--event', named, ...(asked === null ? [] : ['--session', asked]))}`,
  );
  return 0;
}

function lapJson({ session }: EventSession, lap: readonly LapZone[]): object {
  return {
    session,
    zones: lap.map(({ subject, derived: { keys }, gapS }) => ({
      corner: subject.sheet.id,
      car: subject.car.id,
      variant: subject.variant,
      brake_point_m: keys.brakePoint.sM,
      slowest_speed_mps: keys.slowest.speedMps,
      gap_s: gapS,
    })),
  };
}

function page(
  event: CircuitEvent,
  session: EventSession,
  lap: readonly LapZone[],
  { daysLeft, units }: { readonly daysLeft: number; readonly units: CommandContext['units'] },
): string {
  const paragraphs = [
    `${event.name}: ${event.date}, ${daysLeftText(daysLeft)}`,
    ...(event.advice === null ? [] : [event.advice]),
  ];
  const cars = [...new Set(lap.map(({ subject }) => subject.car.name))];
  const notes = [
    ...(event.brakesStayHot ? ['Brakes keep their heat from zone to zone.'] : []),
    ...shortGaps(lap),
  ];
  return [
    ...paragraphs.flatMap((text) => wrapText(text, COLS)),
    '',
    ...event.sessions.map((one) => `${one.session.padEnd(12)}${sessionText(one)}`),
    '',
    `A lap in ${session.session}, ${cars.join(' and ')}; brake points before turn-in:`,
    textColumns([
      ['', 'corner', 'variant', 'brake point', 'slowest', 'to the next'],
      ...lap.map((one, i) => [String(i + 1), ...lapCells(one, units)]),
    ]).trimEnd(),
    ...notes.flatMap((text) => ['', ...wrapText(text, COLS)]),
  ]
    .map((line) => `${line}\n`)
    .join('');
}

function lapCells(
  { zone, subject, derived: { keys }, gapS }: LapZone,
  units: CommandContext['units'],
): readonly string[] {
  const { toNext } = zone;
  const road = toNext.kind === 'metres' ? `, ${distanceText(toNext.gapM, units)}` : '';
  return [
    subject.sheet.name,
    subject.variant,
    brakePointText(keys.brakePoint.sM, units),
    speedText(keys.slowest.speedMps, units),
    `${gapS.toFixed(1)} s${road.replace('.0 ', ' ')}`,
  ];
}

/** Fast bends are braked for in the turn. */
function brakePointText(sM: number, units: CommandContext['units']): string {
  const text = distanceText(Math.abs(sM), units);
  return sM > 0 ? `${text} after` : text;
}

function shortGaps(lap: readonly LapZone[]): readonly string[] {
  const short = lap.filter(({ gapS }) => gapS < shortestGapS(REP_TIMING));
  return short.length === 0 ? [] : [shortGapText(short.map(({ subject }) => subject.sheet.name))];
}
