import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';

/** A page in a real browser, with everything it complained about or asked for. */
export interface OpenPage {
  readonly page: Page;
  /** Console messages, errors, dialogs, and requests for anything but the file itself. */
  readonly complaints: readonly string[];
}

/** How somebody looks at a page. */
export interface Reader {
  readonly width: number;
  readonly scheme?: 'light' | 'dark';
  readonly media?: 'screen' | 'print';
}

const ARGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Debian's browser with a profile of its own and no network. */
export class Browser {
  readonly #folder: string;
  readonly #context: BrowserContext;

  private constructor(folder: string, context: BrowserContext) {
    this.#folder = folder;
    this.#context = context;
  }

  static async start(): Promise<Browser> {
    const folder = mkdtempSync(join(tmpdir(), 'ebbline-browser-'));
    const context = await chromium.launchPersistentContext(folder, {
      executablePath: process.env.EBBLINE_CHROMIUM ?? '/usr/bin/chromium',
      args: ARGS,
      offline: true,
    });
    return new Browser(folder, context);
  }

  async open(
    file: string,
    { width, scheme = 'light', media = 'screen' }: Reader,
  ): Promise<OpenPage> {
    const page = await this.#context.newPage();
    const complaints: string[] = [];
    const address = `file://${file}`;
    page.on('console', (message) => complaints.push(`console: ${message.text()}`));
    page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
    page.on('dialog', (dialog) => {
      complaints.push(`dialog: ${dialog.message()}`);
      void dialog.dismiss();
    });
    page.on('request', (request) => {
      if (request.url() !== address) complaints.push(`request: ${request.url()}`);
    });
    await page.setViewportSize({ width, height: 800 });
    await page.emulateMedia({ media, colorScheme: scheme });
    await page.goto(address);
    return { page, complaints };
  }

  /** Closes what was opened. */
  async close(): Promise<void> {
    const [, ...opened] = this.#context.pages();
    for (const page of opened) await page.close();
  }

  /** Ends for good. */
  async end(): Promise<void> {
    await this.#context.close();
    rmSync(this.#folder, { recursive: true, force: true });
  }
}
