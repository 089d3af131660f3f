import { from, NEVER, ReplaySubject, share, takeUntil } from 'rxjs';
import type { ReportSource } from '../report-source.ts';
import type { SetupTerminal } from '../rig/setup/setup-terminal.ts';
import { type Clock, WALL_CLOCK } from './clock.ts';
import { pacedBatches } from './paced-batches.ts';
import { virtualPedals, virtualWheel } from './virtual-devices.ts';
import { MOVEMENT_S, VirtualHands } from './virtual-hands.ts';
import { VirtualReports } from './virtual-reports.ts';

/** The virtual rig with a simulated driver in it who moves what setting up asks for. */
interface VirtualSetup {
  readonly source: ReportSource;
  /** A terminal that lets the simulated driver move before its question is answered. */
  readonly terminal: SetupTerminal;
}

const PEDAL_BITS = 16;

/** @param clock paces the reports and the driver's movements */
export function openVirtualSetup(terminal: SetupTerminal, clock: Clock = WALL_CLOCK): VirtualSetup {
  const hands = new VirtualHands();
  const closed$ = new ReplaySubject<void>(1);
  const batches = pacedBatches('real', new VirtualReports(hands, PEDAL_BITS), clock);
  const source: ReportSource = {
    label: 'virtual rig',
    devices: [virtualPedals(PEDAL_BITS), virtualWheel()],
    batches$: from(batches).pipe(takeUntil(closed$), share()),
    events$: NEVER.pipe(takeUntil(closed$)),
    simulated: false,
    see: () => undefined,
    close: async () => closed$.next(),
  };
  return {
    source,
    terminal: {
      say: (text) => terminal.say(text),
      ask: async (question, wanted = 'nothing') => {
        if (!hands.knows(wanted)) return terminal.ask(question);
        terminal.say(question);
        hands.move(wanted);
        await clock.wait(1000 * MOVEMENT_S);
        return terminal.ask('The simulated driver has done it. Enter goes on.');
      },
      askLive: (question, live) => {
        hands.moveAgain();
        return terminal.askLive(question, live);
      },
      askUntil: (question, isOver, wanted = 'nothing') => {
        hands.move(wanted);
        return terminal.askUntil(question, isOver);
      },
    },
  };
}
