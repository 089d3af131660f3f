import type { DescriptorItem } from './descriptor-item.ts';
import { descriptorProblem } from './descriptor-problem.ts';
import type { UsageRange } from './report-field.ts';
import { joinUsage, usageIdOf, usagePageOf } from './usage-list.ts';

const EXTENDED_BYTES = 4;

interface DeclaredUsages extends UsageRange {
  /** The declaration carried its own page, which no later usage page item replaces. */
  readonly extended: boolean;
}

/** The usages declared since the last main item (USB HID 1.11, 6.2.2.8), and the delimiter set that is open. */
export class LocalState {
  readonly #warn: (text: string) => void;
  #declared: DeclaredUsages[] = [];
  #minimum: DescriptorItem | null = null;
  #maximum: DescriptorItem | null = null;
  #set: 'none' | 'open' | 'taken' = 'none';

  constructor(warn: (text: string) => void) {
    this.#warn = warn;
  }

  /** @throws Problem for delimiters that nest or close nothing */
  take(item: DescriptorItem, usagePage: number): void {
    if (item.tag === 0x0) this.#declare(item, item, usagePage);
    else if (item.tag === 0x1) this.#declareRange(item, this.#maximum, usagePage);
    else if (item.tag === 0x2) this.#declareRange(this.#minimum, item, usagePage);
    else if (item.tag === 0xa) this.#delimit(item);
    else if (item.tag === 0x6 || item.tag > 0x9)
      this.#warn(`ignored a local item with the unknown tag ${item.tag} at byte ${item.at}`);
  }

  /**
   * The usages for the main item at `at`, in order, with their pages; then starts anew.
   * @throws Problem when a delimiter set is still open
   */
  finish(usagePage: number, at: number): readonly UsageRange[] {
    if (this.#set !== 'none')
      throw descriptorProblem('a delimiter set is not closed before its main item', at);
    if (this.#minimum !== null || this.#maximum !== null)
      this.#warn(`a usage range before byte ${at} has only one end and is ignored`);
    const usages = this.#withPages(usagePage, at);
    this.#declared = [];
    this.#minimum = null;
    this.#maximum = null;
    return usages;
  }

  /** @throws Problem when the descriptor ends inside a delimiter set */
  close(): void {
    if (this.#set !== 'none') throw descriptorProblem('a delimiter set is never closed', null);
  }

  /** The ends of a range may come in either order. */
  #declareRange(
    minimum: DescriptorItem | null,
    maximum: DescriptorItem | null,
    usagePage: number,
  ): void {
    const complete = minimum !== null && maximum !== null;
    if (complete) this.#declare(minimum, maximum, usagePage);
    this.#minimum = complete ? null : minimum;
    this.#maximum = complete ? null : maximum;
  }

  /** Within a delimiter set only the first usage counts: the others are other names for the same control. */
  #declare(from: DescriptorItem, to: DescriptorItem, usagePage: number): void {
    if (this.#set === 'taken') return;
    if (this.#set === 'open') this.#set = 'taken';
    const extended = from.size === EXTENDED_BYTES || to.size === EXTENDED_BYTES;
    const page = pageOf(from) ?? pageOf(to) ?? usagePage;
    const first = joinUsage(page, usageIdOf(from.value));
    const last = joinUsage(pageOf(to) ?? page, usageIdOf(to.value));
    if (last < first || usagePageOf(first) !== usagePageOf(last))
      this.#warn(`the usage range at byte ${to.at} makes no sense and is ignored`);
    else this.#declared.push({ first, last, extended });
  }

  #delimit(item: DescriptorItem): void {
    if (item.value === 1 && this.#set === 'none') this.#set = 'open';
    else if (item.value === 0 && this.#set !== 'none') this.#set = 'none';
    else throw descriptorProblem('delimiter sets are nested or closed without being open', item.at);
  }

  /**
   * A usage without a page of its own gets the page in force at the main item (6.2.2.8). Real devices also list usages
   * of two pages before one main item, each meant for the page it followed; as no reader would get those right by the
   * rule, only the usages after the last one that already has the final page move to it.
   */
  #withPages(usagePage: number, at: number): readonly UsageRange[] {
    const settled = this.#declared.findLastIndex(
      ({ first, extended }) => !extended && usagePageOf(first) === usagePage,
    );
    if (this.#declared.some((usage, i) => i < settled && isElsewhere(usage, usagePage)))
      this.#warn(`the usages before byte ${at} are of several pages; each keeps its own`);
    return this.#declared.map((usage, i) => {
      const moves = i > settled && !usage.extended;
      return onPage(usage, moves ? usagePage : usagePageOf(usage.first));
    });
  }
}

function isElsewhere({ first, extended }: DeclaredUsages, usagePage: number): boolean {
  return !extended && usagePageOf(first) !== usagePage;
}

function pageOf(item: DescriptorItem): number | null {
  return item.size === EXTENDED_BYTES ? usagePageOf(item.value) : null;
}

function onPage({ first, last }: UsageRange, page: number): UsageRange {
  return { first: joinUsage(page, usageIdOf(first)), last: joinUsage(page, usageIdOf(last)) };
}
