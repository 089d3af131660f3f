import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type DisplaySettings, PLAIN_DISPLAY } from '../drill/display/display-settings.ts';
import { displayText, readDisplayText } from '../drill/display/display-text.ts';
import { writePrivateFile } from '../input/rig/write-private-file.ts';
import { Problem } from '../problem.ts';

const LONGEST_NAME = 40;

/**
 * Where a driver's display settings are kept. What a file system may take for the same name, or for a place elsewhere,
 * is told apart by a digest of the driver's name.
 */
export function displayFile(dataDir: string, driver: string): string {
  const readable = driver
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST_NAME);
  const digest = createHash('sha256').update(driver).digest('hex').slice(0, 8);
  return join(dataDir, 'display', `${readable}-${digest}.json`);
}

/** A driver's settings; those that are not there, or cannot be read, are as nobody has set them. */
export async function readDisplay(dataDir: string, driver: string): Promise<DisplaySettings> {
  try {
    return readDisplayText(await readFile(displayFile(dataDir, driver), 'utf8'), driver);
  } catch {
    return PLAIN_DISPLAY;
  }
}

/** Keeps settings one after the other; driving goes on meanwhile, and where it fails. */
export class DisplayKeeper {
  readonly #file: string;
  readonly #driver: string;
  #writing: Promise<void> = Promise.resolve();
  #failure: Problem | null = null;

  constructor(dataDir: string, driver: string) {
    this.#file = displayFile(dataDir, driver);
    this.#driver = driver;
  }

  keep(settings: DisplaySettings): void {
    const text = displayText(this.#driver, settings);
    this.#writing = this.#writing
      .then(() => writePrivateFile(this.#file, text))
      .then(
        () => {
          this.#failure = null;
        },
        (error: unknown) => {
          this.#failure = error instanceof Problem ? error : null;
        },
      );
  }

  /** When all is written: why it was not, or null. */
  async settled(): Promise<Problem | null> {
    await this.#writing;
    return this.#failure;
  }
}
