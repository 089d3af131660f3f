import { Subject } from 'rxjs';
import { describe, expect, test } from 'vitest';
import type { DrillHooks } from '../../src/commands/drill-hooks.ts';
import { runDrill } from '../../src/commands/drill-loop.ts';
import { SpareTurns } from '../../src/commands/spare-turns.ts';
import type { FinishedRep, KeyAction } from '../../src/drill/drill-message.ts';
import type { DrillSetup } from '../../src/drill/drill-setup.ts';
import type { BlockSummary, DrillView, RepLine } from '../../src/drill/drill-view.ts';
import type { ReportBatch } from '../../src/input/report-batch.ts';
import type { DeviceEvent, ReportSource } from '../../src/input/report-source.ts';
import { createRigDecoder } from '../../src/input/rig/rig-decoder.ts';
import type { RigDevice } from '../../src/input/rig-device.ts';
import { DRIVER_PRESETS } from '../../src/input/virtual/driver-preset.ts';
import { SimulatedDriver } from '../../src/input/virtual/simulated-driver.ts';
import { virtualPedals, virtualWheel } from '../../src/input/virtual/virtual-devices.ts';
import { VirtualReports } from '../../src/input/virtual/virtual-reports.ts';
import { virtualRig } from '../../src/input/virtual/virtual-rig.ts';
import { setup } from '../drill/drill-rig.ts';

const BRISK: DrillSetup['timing'] = { countdownS: 1, holdS: 2, showS: 0.5, restS: 0.5 };

/** Plugged in, but nothing of it is assigned. */
const STRANGER: RigDevice = {
  identity: { ...virtualWheel().identity, productId: 99 },
  name: 'Some joystick',
  path: 'virtual:99',
  descriptor: null,
};

/** A drill on a virtual rig whose batches, events and keys are given by hand. */
function bench(hooks: Partial<DrillHooks> = {}, change: Partial<DrillSetup> = {}) {
  const driver = new SimulatedDriver(DRIVER_PRESETS.skilled, 1);
  const reports = new VirtualReports(driver, 16);
  const batches$ = new Subject<ReportBatch>();
  const events$ = new Subject<DeviceEvent>();
  const keys$ = new Subject<KeyAction>();
  const source: ReportSource = {
    label: 'by hand',
    devices: [virtualPedals(), virtualWheel(), STRANGER],
    batches$,
    events$,
    simulated: true,
    see: (view) => driver.see(view),
    close: async () => batches$.complete(),
  };
  /** Everything the loop told, in order. */
  const log: unknown[] = [];
  const keep =
    <T>(list: T[]) =>
    (told: T): void => {
      list.push(told);
      log.push(told);
    };
  const stored: FinishedRep[] = [];
  const lines: RepLine[] = [];
  const summaries: BlockSummary[] = [];
  const views: DrillView[] = [];
  let untilUs = 0;
  const run = runDrill(
    source,
    createRigDecoder(virtualRig(), source.devices),
    setup({ timing: BRISK, ...change }),
    {
      store: keep(stored),
      onRep: keep(lines),
      onSummary: keep(summaries),
      onView: keep(views),
      keys$,
      ...hooks,
    },
  );
  return {
    run,
    log,
    stored,
    lines,
    summaries,
    views,
    keys$,
    events$,
    close: () => batches$.complete(),
    play(seconds: number) {
      for (let i = 0; i < seconds * 125 && batches$.observed; i++) {
        untilUs += 8000;
        batches$.next(reports.next(8, untilUs));
      }
    },
    get view(): DrillView {
      return views.at(-1)!;
    },
  };
}

/** 0.3 armed, 1 to the cue, 1.4 of target and 0.6 after it, 2 held back, 0.5 shown, 0.5 of rest. */
const REP_S = 6.3;

describe('a drill', () => {
  test('runs from bytes to stored reps without a key and ends after an unattended block', async () => {
    const drill = bench({ unattended: true }, { reps: 3 });
    drill.play(3.5 * REP_S);
    const model = await drill.run;
    expect(model.stage.kind).toBe('summary');
    expect(drill.stored.map(({ number, place }) => [number, place])).toEqual([
      [1, 1],
      [2, 2],
      [3, 3],
    ]);
    expect(drill.stored.every(({ outcome }) => outcome?.kind === 'scored')).toBe(true);
    expect(drill.lines.map(({ number }) => number)).toEqual([1, 2, 3]);
    expect(drill.summaries).toMatchObject([{ reps: 3, aborted: 0 }]);
    expect(drill.summaries[0]?.spreadLevel).toBeGreaterThan(0);
  });

  test('stores a rep before any view shows it as finished', () => {
    const drill = bench();
    drill.play(REP_S);
    const storedAt = drill.log.indexOf(drill.stored[0]!);
    const firstResult = drill.views.find(({ phase }) => phase === 'result');
    expect(storedAt).toBeGreaterThan(0);
    expect(storedAt).toBeLessThan(drill.log.indexOf(firstResult));
    expect(drill.log).toContain(firstResult);
  });

  test('goes on after first-of-day reps, and tells their scores together', async () => {
    const drill = bench({ unattended: true }, { reps: 1, repsInLife: 9, hoursSinceLastRep: 24 });
    drill.play(4.5 * REP_S);
    expect(drill.stored).toHaveLength(4);
    expect(drill.lines).toHaveLength(0);
    drill.play(3 * REP_S);
    await drill.run;
    expect(drill.lines).toHaveLength(6);
    expect(drill.summaries.map(({ reps }) => reps)).toEqual([5, 1]);
  });

  test('obeys keys between batches and ends with the second finish', async () => {
    const drill = bench();
    drill.play(1);
    drill.keys$.next('pause');
    expect(drill.view.phase).toBe('paused');
    drill.keys$.next('pause');
    drill.play(REP_S);
    drill.keys$.next('finish');
    expect(drill.view.phase).toBe('summary');
    drill.keys$.next('finish');
    await drill.run;
    expect(drill.stored).toHaveLength(1);
  });

  test('passes on which rep a note is about', () => {
    const noted: number[] = [];
    const drill = bench({ note: (rep) => void noted.push(rep) });
    drill.play(REP_S);
    drill.keys$.next('note');
    expect(noted).toEqual([1]);
  });

  test('ends when the source ends', async () => {
    const drill = bench();
    drill.play(1);
    drill.close();
    await expect(drill.run).resolves.toMatchObject({ attempts: 0 });
  });

  test('fails with what the store throws, so that nobody believes the rep was kept', async () => {
    const drill = bench({
      store: () => {
        throw new Error('disk full');
      },
    });
    const failed = expect(drill.run).rejects.toThrow('disk full');
    drill.play(REP_S);
    await failed;
  });
});

describe('a drill with spare turns', () => {
  const BATCH_S = 0.008;
  /** Plays until the rep is over, and not a batch more. */
  function playRep(drill: ReturnType<typeof bench>): void {
    while (drill.views.at(-1)?.phase !== 'braking') drill.play(BATCH_S);
    while (drill.view.phase === 'braking') drill.play(BATCH_S);
  }

  test('stores the same reps, a few batches later and before their result is shown', () => {
    const [spare, plain] = [bench({ spareTurns: new SpareTurns() }), bench()];
    for (const drill of [spare, plain]) playRep(drill);
    expect([spare.stored, plain.stored].map(({ length }) => length)).toEqual([0, 1]);
    for (const drill of [spare, plain]) drill.play(5 * BATCH_S);
    expect(spare.stored).toEqual(plain.stored);
    spare.play(2);
    const result = spare.views.find((view) => view.result !== null);
    expect(result?.lastReps).toHaveLength(1);
    expect(spare.log.indexOf(spare.stored[0]!)).toBeLessThan(spare.log.indexOf(result));
  });

  test('stores no rehearsal', () => {
    const drill = bench({ spareTurns: new SpareTurns() });
    drill.play(1.2);
    expect(drill.stored).toEqual([]);
    expect(drill.lines).toEqual([]);
  });

  test('has stored a rep that is over before a key about it is obeyed', () => {
    const log: string[] = [];
    const drill = bench({
      spareTurns: new SpareTurns(),
      store: ({ number }) => void log.push(`store ${number}`),
      note: (rep) => void log.push(`note ${rep}`),
    });
    playRep(drill);
    drill.keys$.next('note');
    expect(log).toEqual(['store 1', 'note 1']);
  });

  test('has scored it before any key is obeyed', () => {
    const drill = bench({ spareTurns: new SpareTurns() });
    playRep(drill);
    drill.keys$.next('finish');
    expect(drill.summaries).toMatchObject([{ reps: 1 }]);
  });

  test('has stored a rep that was over when the source ended', async () => {
    const drill = bench({ spareTurns: new SpareTurns() });
    playRep(drill);
    drill.close();
    await drill.run;
    expect(drill.stored).toHaveLength(1);
  });

  test('fails with what the store throws', async () => {
    const drill = bench({
      spareTurns: new SpareTurns(),
      store: () => {
        throw new Error('disk full');
      },
    });
    const failed = expect(drill.run).rejects.toThrow('disk full');
    drill.play(REP_S);
    await failed;
  });
});

describe('a device of the rig', () => {
  const PEDALS = 0;
  const at = (kind: 'lost' | 'back', device = PEDALS): DeviceEvent =>
    kind === 'lost' ? { kind, device, atUs: 0, reason: 'unplugged' } : { kind, device, atUs: 0 };

  test('that goes in the middle of a rep voids it; the drill goes on when it is back', () => {
    const drill = bench();
    drill.play(2.2);
    expect(drill.view.phase).toBe('braking');
    drill.events$.next(at('lost'));
    expect(drill.view).toMatchObject({ phase: 'device-lost' });
    expect(drill.view.message).toContain('Virtual pedals');
    expect(drill.lines).toMatchObject([{ voided: 'device lost' }]);
    drill.events$.next(at('back'));
    drill.play(REP_S);
    expect(drill.stored.map(({ voided }) => voided)).toEqual(['device lost', null]);
    expect(drill.stored.map(({ place }) => place)).toEqual([1, 1]);
  });

  test('is shown as not connected, by the decoder that was told', () => {
    const drill = bench();
    drill.play(1);
    expect(drill.view.health[0]).toMatchObject({ name: 'Virtual pedals', connected: true });
    drill.events$.next(at('lost'));
    drill.play(1);
    expect(drill.view.health[0]).toMatchObject({ name: 'Virtual pedals', connected: false });
  });

  test('matters, any other may come and go', () => {
    const drill = bench();
    drill.play(2.2);
    drill.events$.next(at('lost', 2));
    expect(drill.view.phase).toBe('braking');
    expect(drill.stored).toEqual([]);
  });
});
