import type { WantedMovement } from '../rig/setup/setup-terminal.ts';
import { AT_REST, type Controls } from './controls.ts';
import type { VirtualMover } from './virtual-reports.ts';

/** Three movements, each there, a moment held, and back. */
const MOVEMENTS = 3;
const WAY_S = 0.4;
const HELD_S = 0.3;
const PAUSE_S = 0.3;
const ONE_S = 2 * WAY_S + HELD_S + PAUSE_S;
/** Half of the virtual wheel's lock. */
const STOP_DEG = 450;

/** How long the hands and feet take for what is asked. */
export const MOVEMENT_S: number = PAUSE_S + MOVEMENTS * ONE_S;

/** A simulated driver who sets the rig up: moves what is asked three times, and leaves the rest alone. */
export class VirtualHands implements VirtualMover {
  readonly #controls: Controls = { ...AT_REST };
  #wanted: WantedMovement = 'nothing';
  #startS: number | null = null;

  /** Starts a movement with the next step. */
  move(wanted: WantedMovement): void {
    this.#wanted = wanted;
    this.#startS = null;
  }

  moveAgain(): void {
    this.#startS = null;
  }

  /** True for what this rig has and the driver can do. */
  knows(wanted: WantedMovement): boolean {
    return Object.keys(wish(wanted, 1)).length > 0;
  }

  stepTo(timeS: number): Readonly<Controls> {
    this.#startS ??= timeS;
    const share = shareAt(timeS - this.#startS);
    Object.assign(this.#controls, AT_REST, wish(this.#wanted, share));
    return this.#controls;
  }
}

function wish(wanted: WantedMovement, share: number): Partial<Controls> {
  switch (wanted) {
    case 'brake':
    case 'throttle':
    case 'clutch':
      return { [wanted]: share };
    case 'wheel-left':
      return { steeringDeg: STOP_DEG * share };
    case 'wheel-right':
      return { steeringDeg: -STOP_DEG * share };
    case 'left-paddle':
      return { leftPaddle: share > 0.5 };
    case 'next-button':
      return { nextButton: share > 0.5 };
    default:
      return {};
  }
}

/** 0 at rest, 1 all the way; eased, as a limb moves. */
function shareAt(timeS: number): number {
  const t = timeS - PAUSE_S;
  if (t < 0 || t >= MOVEMENTS * ONE_S) return 0;
  const within = t % ONE_S;
  if (within < WAY_S) return eased(within / WAY_S);
  if (within < WAY_S + HELD_S) return 1;
  return eased(Math.max(0, 1 - (within - WAY_S - HELD_S) / WAY_S));
}

function eased(share: number): number {
  return (1 - Math.cos(Math.PI * share)) / 2;
}
