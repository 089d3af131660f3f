import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { EventSubject } from '../../src/commands/drill-subject.ts';
import { eventSubject } from '../../src/commands/event-subject.ts';
import { builtLaps, lapSetup } from '../../src/commands/lap-setup.ts';
import type { DrillSetup } from '../../src/drill/drill-setup.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { NewRep } from '../../src/history/store.ts';
import type { Rig } from '../../src/input/rig/rig.ts';
import { setup } from '../drill/drill-rig.ts';
import { aPractice, aRep, EVENING_MS } from '../history/fixtures.ts';
import { temporaryFolder } from '../temporary-folder.ts';

const RIG: Rig = { axes: [], buttons: [] } as unknown as Rig;
const dataDir = temporaryFolder('lap-setup');

const NOTHING = { car: null, plan: null };

/** An event of its first zones alone, with the out-lap the same array as the lap where it was. */
function firstZones(subject: EventSubject, count: number): EventSubject {
  const lap = subject.lap.slice(0, count);
  const outLap = subject.outLap === subject.lap ? lap : subject.outLap.slice(0, count);
  return { ...subject, lap, outLap };
}

/** Found once: nobody changes it. */
const SUBJECT = eventSubject(
  { event: 'sallow-fen', laps: 3, session: null },
  NOTHING,
  dataDir,
).then((subject) => firstZones(subject, 2));

const BUILT = new Map<EventSubject, ReturnType<typeof builtLaps>>();

/** What a driver would drive, each subject built once: that takes longer than all that is asked of it. */
function built(subject: EventSubject): ReturnType<typeof builtLaps> {
  const laps = BUILT.get(subject) ?? builtLaps(subject, RIG);
  BUILT.set(subject, laps);
  return laps;
}

/** The setup of the laps for a driver who has driven these reps, so many hours before. */
function laps(subject: EventSubject, reps: readonly Partial<NewRep>[], hours: number): DrillSetup {
  const folder = mkdtempSync(join(tmpdir(), 'lap-setup-history-'));
  const store = openHistory(folder);
  try {
    const practice = store.startPractice(aPractice());
    for (const [i, rep] of reps.entries()) store.addRep(practice, aRep({ number: i + 1, ...rep }));
    const now = { utcMs: EVENING_MS + hours * 3_600_000, zone: 'Europe/Berlin', offsetMin: 60 };
    const plain = setup({ hoursSinceLastRep: reps.length === 0 ? null : hours });
    return lapSetup(plain, built(subject), { store, driver: 'Kim', now });
  } finally {
    store.close();
    rmSync(folder, { recursive: true });
  }
}
const outline = ({ plan }: DrillSetup): string[] =>
  plan!.blocks.map(({ phase, reps }) => `${phase} ${reps.map((r) => r.zone.target.id).join(' ')}`);
const LAP = 'prototype/kiln-hairpin/qualifying prototype/coil-bend/qualifying';

/** A rep of each zone of the lap, as it was stored. */
async function known(subject: EventSubject, count = 2): Promise<Partial<NewRep>[]> {
  const { zones } = built(subject);
  return zones
    .slice(0, count)
    .map(({ target }) => ({ targetId: target.id, targetVersion: target.version }));
}

describe('the first lap of a day', () => {
  test('a new driver has no out-lap: nothing is remembered yet', async () => {
    expect(outline(laps(await SUBJECT, [], 0))).toEqual([`block ${[LAP, LAP, LAP].join(' ')}`]);
  });

  test('a day later it is an out-lap, where every corner was driven before', async () => {
    const subject = await SUBJECT;
    const all = await known(subject);
    expect(outline(laps(subject, all, 24))).toEqual([`first-of-day ${LAP}`, `block ${LAP} ${LAP}`]);
    expect(outline(laps(subject, all, 23.9))).toHaveLength(1);
    expect(outline(laps(subject, await known(subject, 1), 24))).toHaveLength(1);
  });

  test('an out-lap of its own variant is driven in that one', async () => {
    const subject = await eventSubject(
      { event: 'sallow-fen', laps: 2, session: 'race' },
      NOTHING,
      dataDir,
    );
    expect(subject.outLap).not.toBe(subject.lap);
    const two = firstZones(subject, 2);
    const qualifying = await known(await SUBJECT);
    const [first, then] = outline(laps(two, qualifying, 24));
    expect(first).toBe(`first-of-day ${LAP}`);
    expect(then).toBe(`block ${LAP.replaceAll('qualifying', 'race')}`);
  });
});

describe('what a zone is driven with', () => {
  const zonesOf = ({ plan }: DrillSetup) => plan!.blocks[0]!.reps.map(({ zone }) => zone);

  test('its own road, and late calls as often as the session says', async () => {
    const race = await eventSubject(
      { event: 'sallow-fen', laps: 1, session: 'race' },
      NOTHING,
      dataDir,
    );
    const zones = zonesOf(laps(firstZones(race, 3), [], 0));
    expect(zones.map(({ gapS }) => gapS)).toEqual(race.lap.slice(0, 3).map(({ gapS }) => gapS));
    expect(zones[2]!.gapS).toBe(7.5);
    expect(new Set(zones.map(({ live }) => live!.plan.callShare))).toEqual(new Set([0.15]));
    expect(new Set(zones.map(({ live }) => live!.plan.stintS))).toEqual(new Set([null]));
  });

  test('brakes that stay hot cool for as long as the road is', async () => {
    const subject = await SUBJECT;
    const hot = { ...subject, event: { ...subject.event, brakesStayHot: true } };
    const zones = zonesOf(laps(hot, [], 0));
    expect(zones.map(({ live }) => live!.plan.stintS)).toEqual(
      [...zones, ...[]].map((z) => z.gapS),
    );
  });

  test('another car; a plan says how much is shown, when it is enough and what is called late', async () => {
    const wish = { car: 'gt', plan: 'late-stint' };
    const subject = await eventSubject(
      { event: 'sallow-fen', laps: 1, session: null },
      wish,
      dataDir,
    );
    const { plan, timing } = laps(firstZones(subject, 1), [], 0);
    expect(plan!.blocks[0]!.reps[0]!.zone.target.id).toBe('gt/kiln-hairpin/qualifying');
    expect(plan).toMatchObject({
      name: 'Sallow Fen test day',
      condition: 'late stint',
      hardReps: { most: 90 },
      feedback: { kind: 'thinning' },
    });
    expect(timing.countdownS).toBe(3);
  });
});
