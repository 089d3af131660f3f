import { descriptorProblem } from './descriptor-problem.ts';
import { type InputItem, inputFields, isPadding, MAX_FIELD_BITS } from './input-fields.ts';
import type { ReportField } from './report-field.ts';

/** Limits that no sound device meets; they bound the memory a hostile descriptor can ask for. */
const MAX_REPORT_BITS = 8 * 16384;
const MAX_ELEMENT_BITS = 256;
const MAX_FIELDS = 12288;

/**
 * The input reports as they grow main item by main item. Bits are counted per report id, so output and feature items
 * move nothing here, and collections neither.
 */
export class ReportLayout {
  readonly #warn: (text: string) => void;
  readonly #fields: ReportField[] = [];
  readonly #bits = new Map<number, number>();

  constructor(warn: (text: string) => void) {
    this.#warn = warn;
  }

  /**
   * Appends one input item; `at` is its place in the descriptor.
   * @throws Problem for an element, a report or a number of elements beyond any device's
   */
  add(item: Omit<InputItem, 'bitOffset'>, at: number): void {
    const { reportSize, reportCount } = item.globals;
    const bitOffset = this.#bits.get(item.reportId) ?? 0;
    if (reportSize > MAX_ELEMENT_BITS)
      throw descriptorProblem(`an element of ${reportSize} bits (at most ${MAX_ELEMENT_BITS})`, at);
    if (bitOffset + reportSize * reportCount > MAX_REPORT_BITS)
      throw descriptorProblem(`a report longer than ${MAX_REPORT_BITS / 8} bytes`, at);
    this.#bits.set(item.reportId, bitOffset + reportSize * reportCount);
    this.#addFields({ ...item, bitOffset }, at);
  }

  /** By report id, then by place. */
  fields(): readonly ReportField[] {
    return this.#fields.toSorted((a, b) => a.reportId - b.reportId || a.bitOffset - b.bitOffset);
  }

  reportBytes(): ReadonlyMap<number, number> {
    return new Map([...this.#bits].map(([id, bits]) => [id, Math.ceil(bits / 8)]));
  }

  #addFields(item: InputItem, at: number): void {
    const { reportSize, reportCount } = item.globals;
    if (isPadding(item)) return;
    if (reportSize > MAX_FIELD_BITS)
      this.#warn(`data of ${reportSize} bits at byte ${at} cannot be read as numbers; left out`);
    else if (this.#fields.length + reportCount > MAX_FIELDS)
      throw descriptorProblem(`more than ${MAX_FIELDS} data elements`, at);
    else for (const field of inputFields(item, this.#warn)) this.#fields.push(field);
  }
}
