/** What a question asks the driver to move. */
export type WantedMovement =
  | 'nothing'
  | 'brake'
  | 'throttle'
  | 'clutch'
  | 'wheel-straight'
  | 'wheel-left'
  | 'wheel-right'
  | 'load'
  | 'left-paddle'
  | 'next-button'
  | 'button';

/** How setting up talks with the driver, line by line. */
export interface SetupTerminal {
  /** One or more lines, without the last line end. */
  say(text: string): void;
  /**
   * The driver's answer without space around it.
   * @param wanted what is to be moved before the answer; a driver who is simulated has to know
   * @throws Problem where no answer will come any more.
   */
  ask(question: string, wanted?: WantedMovement): Promise<string>;
  /** Asks while `live` is shown anew several times a second. @throws as `ask`. */
  askLive(question: string, live: () => string): Promise<string>;
  /**
   * Asks what needs no answer, until there is one or `isOver` says so, which is looked at several times a second.
   * @returns null where it was over without an answer, or no answer will come any more. @throws what `isOver` throws
   */
  askUntil(
    question: string,
    isOver: () => boolean,
    wanted?: WantedMovement,
  ): Promise<string | null>;
}

/** `where` of the Problem of a terminal that has no more answers. */
export const ANSWERS = 'answers';

/** Asks until the answer is yes or no; Enter alone takes the default. @throws as `ask`. */
export async function askYes(
  terminal: SetupTerminal,
  question: string,
  byDefault: boolean,
  live?: () => string,
): Promise<boolean> {
  const full = `${question} [${byDefault ? 'Y/n' : 'y/N'}]`;
  for (;;) {
    const answer = await (live === undefined ? terminal.ask(full) : terminal.askLive(full, live));
    if (answer === '') return byDefault;
    if (/^y(es)?$/i.test(answer)) return true;
    if (/^no?$/i.test(answer)) return false;
    terminal.say('Answer y or n.');
  }
}

/** Asks until the answer is one of the words or their first letters. @throws as `ask`. */
export async function askWord<T extends string>(
  terminal: SetupTerminal,
  question: string,
  words: readonly T[],
  byDefault: T,
): Promise<T> {
  for (;;) {
    const answer = await terminal.ask(`${question} (${words.join(', ')}) [${byDefault}]`);
    if (answer === '') return byDefault;
    const word = words.find((candidate) => candidate.startsWith(answer.toLowerCase()));
    if (word !== undefined) return word;
    terminal.say(`Answer ${words.join(', ')} or a first letter.`);
  }
}
