import type { ButtonEvent } from '../../trace/rig-batch.ts';
import { compileField, type FieldReader } from '../hid/compile-field.ts';
import type { ButtonAssignment } from './rig.ts';

/**
 * Finds the edges of one button. It counts as up until its device reports: a device that reports on change says
 * nothing before the first press, which must not be lost.
 */
export class ButtonReader {
  readonly #button: ButtonAssignment;
  readonly #read: FieldReader;
  #pressed = false;

  constructor(button: ButtonAssignment) {
    this.#button = button;
    this.#read = compileField(button.field);
  }

  /** The edge that this report made, null nearly always. */
  report(timeS: number, bytes: Uint8Array, start: number, length: number): ButtonEvent | null {
    const value = this.#read(bytes, start, length);
    if (value === null || (value === this.#button.pressedCounts) === this.#pressed) return null;
    return this.#turn(timeS);
  }

  /** The device went: a button held down comes up with it. */
  release(timeS: number): ButtonEvent | null {
    return this.#pressed ? this.#turn(timeS) : null;
  }

  #turn(timeS: number): ButtonEvent {
    this.#pressed = !this.#pressed;
    const { control, action } = this.#button;
    return { timeS, control, pressed: this.#pressed, action };
  }
}
