/** A real browser on a profile of its own, that can be killed with all its processes. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from '@playwright/test';
import { findBrowser } from '../run/find-browser.ts';
import { type StaticServer, serveStatic } from '../run/static-server.ts';
import { buildPage, type PlantName } from './build.ts';
import type { PageStore } from './page/main.ts';

declare global {
  interface Window {
    readonly store: PageStore;
    readonly tellAcked: (ids: readonly string[]) => Promise<void>;
  }
}

export type Engine = 'leveldb' | 'sqlite';
export const ENGINES: readonly Engine[] = ['leveldb', 'sqlite'];

const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export function newProfile(): string {
  return mkdtempSync(join(tmpdir(), 'faults-profile-'));
}

export function dropProfile(profile: string): void {
  rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
}

export async function launch(profile: string, engine: Engine = 'leveldb'): Promise<BrowserContext> {
  return chromium.launchPersistentContext(profile, {
    executablePath: (await findBrowser()) ?? '',
    args: engine === 'sqlite' ? [...ARGS, '--enable-features=IdbSqliteBackingStore'] : ARGS,
  });
}

/** The page in a new tab, with the start check not yet asked for. */
export async function tab(context: BrowserContext, url: string): Promise<Page> {
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForFunction(() => window.store !== undefined);
  return page;
}

/** All processes of the browser on this profile: the one that was started on it, and all that it started. */
export function processesOf(profile: string): number[] {
  const parents = new Map<number, number>();
  const first: number[] = [];
  for (const name of readdirSync('/proc')) {
    if (!/^\d+$/.test(name)) continue;
    try {
      const stat = readFileSync(`/proc/${name}/stat`, 'utf8');
      parents.set(Number(name), Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1]));
      if (readFileSync(`/proc/${name}/cmdline`, 'utf8').includes(`--user-data-dir=${profile}\0`))
        first.push(Number(name));
    } catch {
      // It ended while we looked.
    }
  }
  const all = new Set(first);
  for (let before = -1; before !== all.size; ) {
    before = all.size;
    for (const [pid, parent] of parents) if (all.has(parent)) all.add(pid);
  }
  return [...all];
}

/** SIGKILL: no process of it gets to write another byte. */
export async function kill(profile: string): Promise<void> {
  for (const pid of processesOf(profile)) {
    try {
      process.kill(pid, 'SIGKILL');
    } catch {
      // It ended by itself when its parent did.
    }
  }
  await new Promise((resolve) => setTimeout(resolve, 250));
  for (const name of ['SingletonLock', 'SingletonCookie', 'SingletonSocket'])
    rmSync(join(profile, name), { force: true });
}

const served = new Map<PlantName, Promise<{ server: StaticServer; root: string }>>();
const others: StaticServer[] = [];
let shared: Promise<{ context: BrowserContext; profile: string }> | null = null;

/** Another origin with the same page as it is: a store of its own in a browser that other cases use too. */
export async function ownOrigin(): Promise<string> {
  await pageUrl();
  const { root } = (await served.get('none')) ?? { root: '' };
  const server = await serveStatic({ root: () => root, port: 0, at: '/' });
  others.push(server);
  return server.url;
}

/** One browser for all cases that need no other: to begin one takes longer than most cases. */
export async function sharedBrowser(
  begin: (context: BrowserContext) => Promise<void>,
): Promise<BrowserContext> {
  shared ??= (async () => {
    const profile = newProfile();
    const context = await launch(profile);
    await begin(context);
    return { context, profile };
  })();
  return (await shared).context;
}

/** The address of the page with a fault planted, built once a run. The port differs, so each has an origin of its own. */
export async function pageUrl(plant: PlantName = 'none'): Promise<string> {
  const page = served.get(plant) ?? serve(plant);
  served.set(plant, page);
  return (await page).server.url;
}

async function serve(plant: PlantName): Promise<{ server: StaticServer; root: string }> {
  const root = await buildPage(plant);
  return { server: await serveStatic({ root: () => root, port: 0, at: '/' }), root };
}

export async function stopServing(): Promise<void> {
  if (shared) {
    const { context, profile } = await shared;
    await context.close();
    dropProfile(profile);
  }
  for (const server of others) await server.stop();
  for (const page of served.values()) {
    const { server, root } = await page;
    await server.stop();
    rmSync(root, { recursive: true });
  }
}
