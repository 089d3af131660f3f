import { createInterface, type Interface } from 'node:readline';
import { Problem } from '../../../problem.ts';
import { foldLines } from './fold-lines.ts';
import { ANSWERS, type SetupTerminal } from './setup-terminal.ts';

/** The driver pressed Ctrl-C. */
export class Interrupted extends Error {}

interface Waiting {
  resolve(answer: string): void;
  reject(error: Error): void;
}

const REDRAW_MS = 100;
const LOOK_MS = 250;

/** A terminal on two streams, a terminal or pipes. Answers that come before their question wait for it. */
export class ReadlineTerminal implements SetupTerminal {
  readonly #lines: Interface;
  readonly #output: NodeJS.WritableStream;
  readonly #early: string[] = [];
  #waiting: Waiting | null = null;
  #end: Error | null = null;

  /** @param terminal True to redraw a line in place and to see Ctrl-C. */
  constructor(input: NodeJS.ReadableStream, output: NodeJS.WritableStream, terminal: boolean) {
    this.#output = output;
    this.#lines = createInterface({ input, output, terminal })
      .on('line', (line) => this.#answer(line.trim()))
      .on('SIGINT', () => this.#finish(new Interrupted()))
      .on('close', () => this.#finish(noMoreAnswers()));
  }

  say(text: string): void {
    this.#output.write(`${this.#folded(text)}\n`);
  }

  async ask(question: string): Promise<string> {
    this.#output.write(`${this.#folded(question)} `);
    return this.#next();
  }

  async askLive(question: string, live: () => string): Promise<string> {
    this.#output.write(`${this.#folded(question)}\n`);
    if (!this.#lines.terminal) return this.#next();
    const draw = (): void => void this.#output.write(`\r\u001b[K${live()} `);
    const timer = setInterval(draw, REDRAW_MS);
    try {
      return await this.#next();
    } finally {
      clearInterval(timer);
    }
  }

  async askUntil(question: string, isOver: () => boolean): Promise<string | null> {
    this.#output.write(`${this.#folded(question)} `);
    const { over, stop } = lookFor(isOver);
    try {
      const answer = await Promise.race([this.#next(), over]);
      if (answer === null) this.#output.write('\n');
      return answer;
    } catch (error) {
      if (error instanceof Problem && error.where === ANSWERS) return null;
      throw error;
    } finally {
      stop();
      this.#waiting = null;
    }
  }

  close(): void {
    this.#lines.close();
  }

  /** A terminal breaks lines anywhere; what goes into a pipe stays whole. */
  #folded(text: string): string {
    if (!this.#lines.terminal) return text;
    const { columns = 80 } = this.#output as { readonly columns?: number };
    return foldLines(text, columns - 1);
  }

  #next(): Promise<string> {
    const early = this.#early.shift();
    if (early !== undefined) return Promise.resolve(early);
    if (this.#end !== null) return Promise.reject(this.#end);
    return new Promise((resolve, reject) => {
      this.#waiting = { resolve, reject };
    });
  }

  #answer(line: string): void {
    const waiting = this.#waiting;
    this.#waiting = null;
    if (waiting === null) this.#early.push(line);
    else waiting.resolve(line);
  }

  #finish(error: Error): void {
    this.#end ??= error;
    this.#waiting?.reject(this.#end);
    this.#waiting = null;
  }
}

/** Gives null once it is over, or what `isOver` throws; until it is stopped. */
function lookFor(isOver: () => boolean): { readonly over: Promise<null>; stop(): void } {
  let timer: NodeJS.Timeout | undefined;
  const over = new Promise<null>((resolve, reject) => {
    timer = setInterval(() => {
      try {
        if (isOver()) resolve(null);
      } catch (error) {
        reject(error);
      }
    }, LOOK_MS);
  });
  return { over, stop: () => clearInterval(timer) };
}

function noMoreAnswers(): Problem {
  return new Problem('setting up ended before it was done', {
    where: ANSWERS,
    next: 'What was confirmed is saved. Run `ebbline rig setup` again to go on.',
  });
}
