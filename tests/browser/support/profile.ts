import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
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
  /** SIGKILL to every process of this browser, as when the battery falls out. Linux only. */
  kill(): Promise<void>;
};

export function newProfile(options: Options, eachTime: (context: BrowserContext) => Promise<void>): Profile {
  const folder = mkdtempSync(join(tmpdir(), 'greenweight-phone-'));
  let running: BrowserContext | null = null;
  const close = async () => {
    await running?.close().catch(() => {
      // It was killed.
    });
    running = null;
  };
  return {
    folder,
    close,
    async open() {
      await close();
      rmSync(join(folder, 'SingletonLock'), { force: true });
      running = await chromium.launchPersistentContext(folder, options);
      await eachTime(running);
      return running;
    },
    async kill() {
      for (const pid of processesOf(folder)) killGroup(pid);
      await close();
    },
  };
}

function processesOf(folder: string): number[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name) && commandOf(name).includes(`--user-data-dir=${folder}`))
    .map(Number);
}

function commandOf(pid: string): string {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8');
  } catch {
    return '';
  }
}

/** The browser leads a process group of its own, which its helpers are in; a helper leads none and is already gone. */
function killGroup(pid: number): void {
  try {
    process.kill(-pid, 'SIGKILL');
  } catch {
    // Not a leader.
  }
}
