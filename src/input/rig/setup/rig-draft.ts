import type { ButtonAction } from '../../../trace/rig-batch.ts';
import type { AxisAssignment, AxisRole, ButtonAssignment, Rig } from '../rig.ts';

/** The rig while it is being set up. */
export class RigDraft {
  readonly #axes: Map<AxisRole, AxisAssignment>;
  readonly #buttons: Map<ButtonAction | string, ButtonAssignment>;
  wheelLockDeg: number | null;
  foot: Rig['foot'];
  footwear: string;

  /** Starts from what was set up before. */
  constructor(known: Rig | null) {
    this.#axes = new Map((known?.axes ?? []).map((axis) => [axis.role, axis]));
    this.#buttons = new Map(
      (known?.buttons ?? []).map((button) => [button.action ?? button.control, button]),
    );
    this.wheelLockDeg = known?.wheelLockDeg ?? null;
    this.foot = known?.foot ?? 'left';
    this.footwear = known?.footwear ?? '';
  }

  axis(role: AxisRole): AxisAssignment | null {
    return this.#axes.get(role) ?? null;
  }

  setAxis(axis: AxisAssignment): void {
    this.#axes.set(axis.role, axis);
  }

  dropAxis(role: AxisRole): void {
    this.#axes.delete(role);
  }

  button(action: ButtonAction): ButtonAssignment | null {
    return this.#buttons.get(action) ?? null;
  }

  /** A button does one thing: a job it had before is taken off it. */
  setButton(action: ButtonAction, button: Omit<ButtonAssignment, 'action'>): void {
    for (const [key, other] of this.#buttons)
      if (isSameButton(other, button)) this.#buttons.delete(key);
    this.#buttons.set(action, { ...button, action });
  }

  get rig(): Rig {
    return {
      axes: [...this.#axes.values()],
      buttons: [...this.#buttons.values()],
      wheelLockDeg: this.wheelLockDeg,
      foot: this.foot,
      footwear: this.footwear,
    };
  }
}

function isSameButton(
  a: Omit<ButtonAssignment, 'action'>,
  b: Omit<ButtonAssignment, 'action'>,
): boolean {
  return JSON.stringify([a.device, a.field]) === JSON.stringify([b.device, b.field]);
}
