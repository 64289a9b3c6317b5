import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium } from '@playwright/test';

type Options = NonNullable<Parameters<typeof chromium.launchPersistentContext>[1]>;

/** A phone that can be switched off and on: one profile folder, opened again and again. */
export type Profile = {
  readonly folder: string;
  /** Starts the browser, closing it first where it runs. */
  open(): Promise<BrowserContext>;
  close(): Promise<void>;
};

export function newProfile(options: Options, eachTime: (context: BrowserContext) => Promise<void>): Profile {
  const folder = mkdtempSync(join(tmpdir(), 'greenweight-phone-'));
  let running: BrowserContext | null = null;
  const close = async () => {
    await running?.close();
    running = null;
  };
  return {
    folder,
    close,
    async open() {
      await close();
      running = await chromium.launchPersistentContext(folder, options);
      await eachTime(running);
      return running;
    },
  };
}
