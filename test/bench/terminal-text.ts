const ESCAPE = '\x1b';
/** What follows an escape: a control sequence, or one of the short sequences that are used here. */
const SEQUENCE = /^\[([?>]?)([\d;]*)([@-~])|^[78=>]|^\([0B]/;
/** Control sequences that only change looks or modes. */
const LOOKS: ReadonlySet<string> = new Set(['m', 'r', 'h', 'l', 't', 'n', 'c']);

/** The text of a terminal's screen, from the bytes that a program writes. It knows what screens here use of ECMA-48. */
export class TerminalText {
  readonly #rows: string[][];
  readonly #cols: number;
  #row = 0;
  #col = 0;
  #saved: readonly [number, number] = [0, 0];

  constructor({ cols, rows }: { readonly cols: number; readonly rows: number }) {
    this.#cols = cols;
    this.#rows = Array.from({ length: rows }, () => this.#blank());
  }

  get lines(): readonly string[] {
    return this.#rows.map((row) => row.join(''));
  }

  /** @throws Error for a sequence that it does not know (ECMA-48, and DEC's saving of the cursor) */
  write(text: string): void {
    const [plain = '', ...escaped] = text.split(ESCAPE);
    for (const letter of plain) this.#put(letter);
    for (const piece of escaped) {
      const sequence = SEQUENCE.exec(piece);
      if (sequence === null) throw new Error(`unknown sequence ESC ${piece.slice(0, 8)}`);
      this.#obey(sequence);
      for (const letter of piece.slice(sequence[0].length)) this.#put(letter);
    }
  }

  #obey([whole, mark, numbers = '', name]: RegExpExecArray): void {
    if (whole === '7') this.#saved = [this.#row, this.#col];
    else if (whole === '8') [this.#row, this.#col] = this.#saved;
    else if (name !== undefined && mark === '' && !LOOKS.has(name))
      this.#control(name, numbers.split(';').map(Number));
  }

  #put(letter: string): void {
    if (letter === '\r') this.#col = 0;
    else if (letter === '\n') this.#row = Math.min(this.#rows.length - 1, this.#row + 1);
    else if (letter === '\b') this.#col = Math.max(0, this.#col - 1);
    else if (letter >= ' ') this.#rows[this.#row]![this.#col++] = letter;
  }

  #control(name: string, [first = 0, second = 0]: readonly number[]): void {
    const count = Math.max(1, first);
    const row = this.#rows[this.#row]!;
    const to = { A: -count, B: count }[name];
    if (to !== undefined) this.#row += to;
    else if (name === 'C') this.#col += count;
    else if (name === 'D') this.#col -= count;
    else if (name === 'G') this.#col = count - 1;
    else if (name === 'd') this.#row = count - 1;
    else if (name === 'H') [this.#row, this.#col] = [count - 1, Math.max(1, second) - 1];
    else if (name === 'X') row.fill(' ', this.#col, this.#col + count);
    else if (name === 'K' && first === 0) row.fill(' ', this.#col);
    else if (name === 'J' && first === 2) for (const [i] of this.#rows.entries()) this.#clear(i);
    else throw new Error(`unknown control sequence CSI ${first};${second} ${name}`);
  }

  #clear(row: number): void {
    this.#rows[row] = this.#blank();
  }

  #blank(): string[] {
    return Array.from({ length: this.#cols }, () => ' ');
  }
}
