import { createInterface } from 'node:readline';
import { Observable, Subject } from 'rxjs';

/** Lines that are typed, in order; those that come before anybody listens wait. */
export class TypedLines {
  /** Live lines, after those that waited. One listener at a time. */
  readonly lines$: Observable<string>;
  readonly #coming$: Subject<string> = new Subject();
  readonly #early: string[] = [];
  readonly #close: () => void;
  /** Nobody will type any more. */
  ended = false;

  constructor(input: NodeJS.ReadableStream) {
    const reader = createInterface({ input, terminal: false });
    reader.on('line', (line) => {
      if (this.#coming$.observed) this.#coming$.next(line);
      else this.#early.push(line);
    });
    reader.on('close', () => {
      this.ended = true;
      this.#coming$.complete();
    });
    this.#close = () => reader.close();
    this.lines$ = new Observable((listener) => {
      while (this.#early.length > 0 && !listener.closed) listener.next(this.#early.shift()!);
      return this.#coming$.subscribe(listener);
    });
  }

  close(): void {
    this.#close();
  }
}
