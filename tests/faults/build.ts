/** Builds the fault page, as it is or with one fault planted in the store: a test that cannot see the planted fault is no test. */
import { copyFileSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { build, type Plugin } from 'vite';

/** What a planted fault puts in place of what; every one must be found, so that none is planted in vain. */
export type Plant = readonly { readonly file: string; readonly from: string; readonly to: string }[];

const NONE: Plant = [];

export const PLANTS = {
  none: NONE,
  'saved too early': [
    {
      file: 'store/append.ts',
      from: 'let stored = await healing(() => store(ready, tried++ > 0));',
      to: "let stored = healing(() => store(ready, false)); if (ready.length > 0) return { ok: true, entries: ready, copies: 'both' }; stored = await stored;",
    },
  ],
  'two transactions': [
    {
      file: 'store/append.ts',
      from: "log.transaction('rw', log.entries, log.devices, async () => {",
      to: '((work) => work())(async () => {',
    },
    { file: 'store/database.ts', from: '&[device+seq]', to: '[device+seq]' },
  ],
  'copy not flushed': [{ file: 'store/journal-worker.ts', from: 'handle.flush();', to: '' }],
  'store not strict': [
    {
      file: 'store/database.ts',
      from: "chromeTransactionDurability: 'strict'",
      to: "chromeTransactionDurability: 'relaxed'",
    },
  ],
} satisfies Record<string, Plant>;

export type PlantName = keyof typeof PLANTS;

/** What was planted is taken from `left`. */
function planted(plant: Plant, left: Set<Plant[number]>): Plugin {
  return {
    name: 'planted',
    enforce: 'pre',
    transform(code, id) {
      let changed = code;
      for (const each of plant) {
        if (!id.split('?')[0]?.endsWith(each.file)) continue;
        if (!changed.includes(each.from)) throw new Error(`planted: ${each.file} has no ${each.from}`);
        changed = changed.replaceAll(each.from, () => each.to);
        left.delete(each);
      }
      return { code: changed, map: null };
    },
  };
}

/** The folder of the built page. */
export async function buildPage(name: PlantName): Promise<string> {
  const outDir = mkdtempSync(join(tmpdir(), 'faults-page-'));
  const plant: Plant = PLANTS[name];
  const left = new Set(plant);
  const inWorker = plant.filter(({ file }) => file.endsWith('worker.ts'));
  const inPage = plant.filter((each) => !inWorker.includes(each));
  await build({
    configFile: false,
    root: 'tests/faults/page',
    base: './',
    logLevel: 'error',
    define: { __BUILD__: JSON.stringify('faults') },
    plugins: [react(), planted(inPage, left)],
    worker: { plugins: () => [planted(inWorker, left)] },
    build: { outDir, emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0, minify: false },
  });
  if (left.size > 0)
    throw new Error(`planted: nothing was changed in ${[...left].map(({ file }) => file).join()}`);
  copyFileSync('public/_headers', join(outDir, '_headers'));
  return outDir;
}
