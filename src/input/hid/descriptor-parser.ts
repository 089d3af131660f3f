import type { DescriptorItem } from './descriptor-item.ts';
import { descriptorProblem } from './descriptor-problem.ts';
import { type GlobalState, INITIAL_GLOBALS, withGlobalItem } from './global-state.ts';
import { LocalState } from './local-state.ts';
import type { ParsedDescriptor, UsageRange } from './report-field.ts';
import { ReportLayout } from './report-layout.ts';
import { WarningList } from './warning-list.ts';

/** Item tags of USB HID 1.11, 6.2.2.4 and 6.2.2.7. */
const MAIN = {
  input: 0x8,
  output: 0x9,
  collection: 0xa,
  feature: 0xb,
  endCollection: 0xc,
} as const;
const GLOBAL = { reportId: 0x8, push: 0xa, pop: 0xb } as const;

const MAX_PUSHES = 64;
const MAX_REPORT_ID = 255;
const APPLICATION = 1;

interface Saved {
  readonly globals: GlobalState;
  readonly reportId: number;
}

/** State of one pass over a descriptor: feed every item to `take`, then call `finish`. */
export class DescriptorParser {
  readonly #warnings = new WarningList();
  readonly #layout = new ReportLayout((text) => this.warn(text));
  readonly #locals = new LocalState((text) => this.warn(text));
  readonly #stack: Saved[] = [];
  readonly #applications: number[] = [];
  #globals: GlobalState = INITIAL_GLOBALS;
  #reportId = 0;
  #depth = 0;
  /** A report without an id was described. */
  #unnumbered = false;

  warn(text: string): void {
    this.#warnings.add(text);
  }

  /** @throws Problem where nothing sensible can be made of the item */
  take(item: DescriptorItem): void {
    if (item.kind === 'main') this.#takeMain(item);
    else if (item.kind === 'global') this.#takeGlobal(item);
    else if (item.kind === 'local') this.#locals.take(item, this.#globals.usagePage);
    else this.warn(`ignored an item of the reserved type at byte ${item.at}`);
  }

  finish(): ParsedDescriptor {
    this.#locals.close();
    if (this.#depth > 0) this.warn(`${this.#depth} collection(s) are never closed`);
    const fields = this.#layout.fields();
    if (fields.length === 0) this.warn('no input data is described');
    return {
      fields,
      usesReportIds: this.#reportId !== 0,
      reportBytes: this.#layout.reportBytes(),
      applications: this.#applications,
      warnings: this.#warnings.list(),
    };
  }

  #takeMain(item: DescriptorItem): void {
    const usages = this.#locals.finish(this.#globals.usagePage, item.at);
    if (item.tag === MAIN.input) this.#input(item, usages);
    else if (item.tag === MAIN.output || item.tag === MAIN.feature) this.#noteData(item);
    else if (item.tag === MAIN.collection) this.#open(item, usages);
    else if (item.tag === MAIN.endCollection) this.#closeCollection(item);
    else this.warn(`ignored a main item with the unknown tag ${item.tag} at byte ${item.at}`);
  }

  #input(item: DescriptorItem, usages: readonly UsageRange[]): void {
    this.#noteData(item);
    const { value: flags, at } = item;
    this.#layout.add({ flags, globals: this.#globals, usages, reportId: this.#reportId }, at);
  }

  #noteData(item: DescriptorItem): void {
    if (this.#reportId === 0) this.#unnumbered = true;
    if (this.#depth === 0) this.warn(`the data at byte ${item.at} is outside any collection`);
    if (this.#globals.reportSize === 0 || this.#globals.reportCount === 0)
      this.warn(`the data at byte ${item.at} has no bits`);
  }

  #open(item: DescriptorItem, usages: readonly UsageRange[]): void {
    const usage = usages[0]?.first ?? 0;
    if (this.#depth === 0 && item.value === APPLICATION) this.#applications.push(usage);
    this.#depth++;
  }

  #closeCollection(item: DescriptorItem): void {
    if (this.#depth === 0) this.warn(`byte ${item.at} closes a collection that is not open`);
    else this.#depth--;
  }

  #takeGlobal(item: DescriptorItem): void {
    const next = withGlobalItem(this.#globals, item);
    if (next !== null) this.#globals = next;
    else if (item.tag === GLOBAL.reportId) this.#setReportId(item);
    else if (item.tag === GLOBAL.push) this.#push(item);
    else if (item.tag === GLOBAL.pop) this.#pop(item);
    else this.warn(`ignored a global item with the unknown tag ${item.tag} at byte ${item.at}`);
  }

  #setReportId(item: DescriptorItem): void {
    if (item.value === 0 || item.value > MAX_REPORT_ID)
      throw descriptorProblem(`report id ${item.value} is not from 1 to ${MAX_REPORT_ID}`, item.at);
    if (this.#unnumbered)
      throw descriptorProblem('some reports have an id and others have none', item.at);
    this.#reportId = item.value;
  }

  #push(item: DescriptorItem): void {
    if (this.#stack.length === MAX_PUSHES)
      throw descriptorProblem(`more than ${MAX_PUSHES} pushes without a pop`, item.at);
    this.#stack.push({ globals: this.#globals, reportId: this.#reportId });
  }

  /** A pop leaves the report id alone: otherwise reports that belong to different ids would run into one. */
  #pop(item: DescriptorItem): void {
    const saved = this.#stack.pop();
    if (saved === undefined) throw descriptorProblem('a pop without a push', item.at);
    if (saved.reportId !== this.#reportId)
      this.warn(`the pop at byte ${item.at} leaves the report id at ${this.#reportId}`);
    this.#globals = saved.globals;
  }
}
