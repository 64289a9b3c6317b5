/** Damages the files of a closed browser, opens it again and looks what the store makes of it. */
import {
  existsSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { StartState } from '#store/state.ts';
import { dropProfile, type Engine, launch, newProfile, ownOrigin, tab } from './browser.ts';

const COUNT = 60;

type Files = {
  readonly store: readonly string[];
  readonly copy: readonly string[];
  readonly witness: readonly string[];
};
type Damage = {
  readonly name: string;
  readonly engines: readonly Engine[];
  readonly does: (files: Files) => void;
  /** All acknowledged entries can be brought back, or, where both copies went, the loss must be told. */
  readonly expects: 'all' | 'loss told';
  /** Nothing was lost by it anywhere, so that nothing need be told. All others must be. */
  readonly harmless?: true;
};

const largest = (files: readonly string[], end: string) => {
  const [first] = files
    .filter((file) => file.endsWith(end) && existsSync(file))
    .sort((a, b) => statSync(b).size - statSync(a).size);
  if (first === undefined) throw new Error(`damage: no file ends in ${end} among ${files.join(', ')}`);
  return first;
};
const overwrite = (file: string, change: (bytes: Buffer) => Buffer | undefined) => {
  const bytes = readFileSync(file);
  writeFileSync(file, change(bytes) ?? bytes);
};
const flip = (count: number, step: number) => (bytes: Buffer) => {
  for (let at = 0; at < count; at++) {
    const place = (bytes.length >> 1) + at * step;
    bytes[place] = (bytes[place] ?? 0) ^ 0xff;
  }
  return bytes;
};
const half = (file: string) => truncateSync(file, statSync(file).size >> 1);
const remove = (files: readonly string[]) => {
  for (const file of files) rmSync(file, { force: true });
};

const LEVEL: readonly Engine[] = ['leveldb'];
const SQLITE: readonly Engine[] = ['sqlite'];
const BOTH: readonly Engine[] = ['leveldb', 'sqlite'];

export const DAMAGES: readonly Damage[] = [
  { name: 'nothing', engines: BOTH, expects: 'all', harmless: true, does: () => undefined },
  {
    name: '2 bytes of the log flipped',
    engines: LEVEL,
    expects: 'all',
    does: ({ store }) => overwrite(largest(store, '.log'), flip(2, 1)),
  },
  {
    name: 'tail of the log torn',
    engines: LEVEL,
    expects: 'all',
    does: ({ store }) => {
      const file = largest(store, '.log');
      truncateSync(file, statSync(file).size - 200);
    },
  },
  { name: 'log halved', engines: LEVEL, expects: 'all', does: ({ store }) => half(largest(store, '.log')) },
  {
    name: 'head of the log zeroed',
    engines: LEVEL,
    expects: 'all',
    does: ({ store }) => overwrite(largest(store, '.log'), (bytes) => bytes.fill(0, 0, 4096)),
  },
  {
    name: 'MANIFEST emptied',
    engines: LEVEL,
    expects: 'all',
    does: ({ store }) => truncateSync(store.find((file) => /MANIFEST/.test(file)) ?? '', 0),
  },
  {
    name: 'CURRENT emptied',
    engines: LEVEL,
    expects: 'all',
    does: ({ store }) => truncateSync(largest(store, 'CURRENT'), 0),
  },
  {
    name: '64 bytes of the file flipped',
    // This back end mends or does not use what lies there.
    harmless: true,
    engines: SQLITE,
    expects: 'all',
    does: ({ store }) => overwrite(largest(store, ''), flip(64, 1)),
  },
  {
    name: '1 % of the file flipped',
    engines: SQLITE,
    expects: 'all',
    does: ({ store }) =>
      overwrite(largest(store, ''), (bytes) => flip(Math.floor(bytes.length / 200), 97)(bytes)),
  },
  {
    name: 'head of the file zeroed',
    engines: SQLITE,
    expects: 'all',
    does: ({ store }) => overwrite(largest(store, ''), (bytes) => bytes.fill(0, 0, 100)),
  },
  { name: 'file halved', engines: SQLITE, expects: 'all', does: ({ store }) => half(largest(store, '')) },
  {
    name: 'file emptied',
    engines: SQLITE,
    expects: 'all',
    does: ({ store }) => truncateSync(largest(store, ''), 0),
  },
  { name: 'all files of the store gone', engines: BOTH, expects: 'all', does: ({ store }) => remove(store) },
  { name: 'all files of the copy gone', engines: BOTH, expects: 'all', does: ({ copy }) => remove(copy) },
  {
    name: 'copy flipped',
    engines: BOTH,
    expects: 'all',
    does: ({ copy }) => {
      for (const file of copy) if (statSync(file).size > 2000) overwrite(file, flip(8, 300));
    },
  },
  {
    name: 'copy halved',
    engines: BOTH,
    expects: 'all',
    does: ({ copy }) => {
      for (const file of copy) half(file);
    },
  },
  {
    name: 'witness gone',
    engines: BOTH,
    expects: 'all',
    harmless: true,
    does: ({ witness }) => remove(witness),
  },
  {
    name: 'store and witness gone',
    engines: BOTH,
    expects: 'all',
    does: ({ store, witness }) => remove([...store, ...witness]),
  },
  {
    name: 'copy and witness gone',
    engines: BOTH,
    expects: 'all',
    does: ({ copy, witness }) => remove([...copy, ...witness]),
  },
  {
    name: 'store and copy gone',
    engines: BOTH,
    expects: 'loss told',
    does: ({ store, copy }) => remove([...store, ...copy]),
  },
  {
    name: 'store gone and copy halved',
    engines: BOTH,
    expects: 'loss told',
    does: ({ store, copy }) => {
      remove(store);
      for (const file of copy) half(file);
    },
  },
];

export type Damaged = {
  readonly start: StartState;
  /** Whether the store could not be read at all, and a new one was begun from the copy. */
  readonly begun: boolean;
  readonly acked: number;
  /** Acknowledged entries that the store holds after the start. */
  readonly kept: number;
  /** Whether an entry that was appended afterwards continues no broken chain. */
  readonly faultsAfter: readonly string[];
  /** What the maker can read of it afterwards. */
  readonly noticed: readonly string[];
};

function filesUnder(folder: string): string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== 'LOCK')
    .map((entry) => join(entry.parentPath, entry.name));
}

/** Local storage is one for all origins of a browser, so that whoever loses it is damaged in a browser apart. */
const group = ({ name }: Damage) => (name.includes('witness') ? 'witness' : 'files');
const groups = new Map<string, Promise<Map<string, Damaged>>>();

/** What became of it. All damages of a kind are done to one browser, each to an origin of its own. */
export async function damaged(damage: Damage, engine: Engine): Promise<Damaged> {
  const key = `${group(damage)} ${engine}`;
  const all = DAMAGES.filter((each) => each.engines.includes(engine) && group(each) === group(damage));
  const outcomes = groups.get(key) ?? damageAll(all, engine);
  groups.set(key, outcomes);
  const outcome = (await outcomes).get(damage.name);
  if (!outcome) throw new Error(`damaged: nothing is known of ${damage.name}`);
  return outcome;
}

type Prepared = {
  readonly damage: Damage;
  readonly url: string;
  readonly acked: readonly string[];
  files: Files;
};

async function damageAll(damages: readonly Damage[], engine: Engine): Promise<Map<string, Damaged>> {
  const profile = newProfile();
  const folder = join(profile, 'Default');
  const prepared: Prepared[] = [];
  let context = await launch(profile, engine);
  for (const damage of damages) {
    const roots = ['IndexedDB', 'File System'].map((root) => join(folder, root));
    const before = new Set(roots.flatMap((root) => (existsSync(root) ? readdirSync(root) : [])));
    const url = await ownOrigin();
    const page = await tab(context, url);
    const acked = await page.evaluate(fill, COUNT);
    const own = roots.map((root) =>
      readdirSync(root)
        .filter((name) => !before.has(name) && !SHARED.has(name))
        .map((name) => join(root, name)),
    );
    const [store = [], copy = []] = own;
    if (store.length !== 1 || copy.length !== 1)
      throw new Error(`damageAll: not one folder each for ${damage.name}: ${own.flat().join()}`);
    await page.close();
    prepared.push({ damage, url, acked, files: { store, copy, witness: [] } });
  }
  await context.close();
  for (const { damage, files } of prepared)
    damage.does({
      store: files.store.flatMap(filesUnder),
      copy: files.copy.flatMap(filesUnder).filter((file) => !/(Paths|\.usage)/.test(file)),
      witness: filesUnder(join(folder, 'Local Storage')),
    });

  context = await launch(profile, engine);
  const outcomes = new Map<string, Damaged>();
  for (const { damage, url, acked } of prepared)
    outcomes.set(damage.name, await found(await tab(context, url), acked));
  await context.close();
  dropProfile(profile);
  return outcomes;
}

/** Kept by the browser for all origins at once. */
const SHARED: ReadonlySet<string> = new Set(['Origins', 'primary.origin']);

async function fill(count: number): Promise<string[]> {
  await window.store.startCheck();
  const ids: string[] = [];
  for (let number = 0; number < count; number++) {
    const appended = await window.store.write([`${number} ${'x'.repeat(200)}`]);
    if (appended.ok) ids.push(...appended.entries.map(({ id }) => id));
  }
  return ids;
}

async function found(page: Page, acked: readonly string[]): Promise<Damaged> {
  let start = await page.evaluate(() => window.store.lookThrough());
  const begun = start.code === 'cannot-open';
  if (begun) {
    await Promise.all([page.waitForEvent('load'), page.evaluate(() => window.store.beginFromCopy())]);
    await page.waitForFunction(() => window.store !== undefined);
    start = await page.evaluate(() => window.store.lookThrough());
  }
  const after = await page.evaluate(async (ready) => {
    const { stored } = await window.store.held();
    if (ready) await window.store.write(['after']);
    const { faults, notices } = await window.store.health();
    return {
      stored,
      faultsAfter: faults.map((fault) => fault.code),
      noticed: notices.map(({ code }) => code),
    };
  }, start.code === 'ready');
  await page.close();
  const stored = new Set(after.stored);
  return {
    start,
    begun,
    acked: acked.length,
    kept: acked.filter((id) => stored.has(id)).length,
    faultsAfter: after.faultsAfter,
    noticed: after.noticed,
  };
}

/** What is wrong with an outcome, or null. Whatever was lost must have been told. */
export function verdict(damage: Damage, { start, acked, kept, noticed }: Damaged): string | null {
  const lost = acked - kept;
  if (acked !== COUNT) return `only ${acked} of ${COUNT} were acknowledged before`;
  if (!damage.harmless && start.code === 'ready' && noticed.length === 0) return 'it was not noticed';
  if (damage.expects === 'all')
    return start.code === 'ready' && lost === 0 ? null : `lost ${lost}, start ${JSON.stringify(start)}`;
  const told = start.code === 'lost' ? start.missing : start.code === 'ready' ? missingOf(start.told) : 0;
  return lost > 0 && told === lost ? null : `lost ${lost}, told ${told}, start ${JSON.stringify(start)}`;
}

function missingOf(told: readonly { code: string; count: number }[]): number {
  return told.find(({ code }) => code === 'missing')?.count ?? 0;
}
