import type { AntiLockState } from '../car/anti-lock.ts';
import type { LiveDrive } from './live-drive.ts';
import type { LiveEvent } from './live-event.ts';
import { stepTimeS } from './step-time.ts';

/** From here on wheels count as locking up: past the slip at which a tyre grips best, 0.05 to 0.15. */
const LOCKING_SLIP = 0.2;
/** Below it they roll again. */
const ROLLING_SLIP = 0.05;

type Lasting = Extract<LiveEvent, { readonly kind: 'lock-up' | 'anti-lock' }>;

/** Notes lock-ups and what anti-lock does, after a step. */
export function noteSlip(drive: LiveDrive): void {
  const { motion } = drive;
  noteLockUp(drive, 'front', motion.frontSlip);
  noteLockUp(drive, 'rear', motion.rearSlip);
  noteAntiLock(drive, 'front', drive.frontAntiLock);
  noteAntiLock(drive, 'rear', drive.rearAntiLock);
}

function noteLockUp(drive: LiveDrive, axle: 'front' | 'rear', slip: number): void {
  if (slip > LOCKING_SLIP) begin(drive, 'lock-up', axle);
  else if (slip < ROLLING_SLIP) end(drive, 'lock-up', axle);
}

function noteAntiLock(drive: LiveDrive, axle: 'front' | 'rear', { phase }: AntiLockState): void {
  if (phase === 'off') end(drive, 'anti-lock', axle);
  else begin(drive, 'anti-lock', axle);
}

function begin(drive: LiveDrive, kind: Lasting['kind'], axle: Lasting['axle']): void {
  const { events, motion, step } = drive;
  if (openIndex(events, kind, axle) !== -1) return;
  const fromS = stepTimeS(step + 1);
  events.push({ kind, axle, fromM: motion.sM, fromS, toM: null, toS: null });
}

function end(drive: LiveDrive, kind: Lasting['kind'], axle: Lasting['axle']): void {
  const { events, motion, step } = drive;
  const open = openIndex(events, kind, axle);
  if (open === -1) return;
  events[open] = { ...(events[open] as Lasting), toM: motion.sM, toS: stepTimeS(step + 1) };
}

/** Index of the event that still goes on, or -1. There are a handful of events in a rep. */
function openIndex(
  events: readonly LiveEvent[],
  kind: Lasting['kind'],
  axle: Lasting['axle'],
): number {
  for (let i = events.length - 1; i >= 0; i--) {
    const event = events[i] as LiveEvent;
    if (event.kind === kind && event.axle === axle) return event.toM === null ? i : -1;
  }
  return -1;
}
