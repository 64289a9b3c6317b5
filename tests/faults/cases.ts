import assert from 'node:assert/strict';
import { ENGINES } from './browser.ts';
import { DAMAGES, damaged, verdict } from './damage.ts';
import * as fullDisk from './full-disk.ts';
import { killLoop } from './kill.ts';
import * as roomAndTime from './room-and-time.ts';
import { canTrace, countSyncs } from './syncs.ts';
import { twoTabs } from './two-tabs.ts';
import * as whileOpen from './while-open.ts';

export type Settings = { readonly kills: number; readonly seed: number; readonly entries: number };
/** A case says what it saw, or null where this machine lacks what it needs: then it was not run, which is not a pass. */
export type FaultCase = {
  readonly name: string;
  readonly run: (settings: Settings) => Promise<string | null>;
};

/** In the long form it writes so much longer that 500 kills see more than 20,000 entries. */
const LONG = { kills: 200, mostMs: 2200 };

/** A profile sees so many kills at most: a log that grows on and on would be most of the work. */
const A_PROFILE = 50;

const kills: readonly FaultCase[] = ENGINES.map((engine) => ({
  name: `kill loop (${engine})`,
  run: async ({ kills: asked, seed }) => {
    const most = engine === 'leveldb' ? asked : Math.ceil(asked / 3);
    const all = { kills: 0, acked: 0 };
    while (all.kills < most) {
      const part = Math.min(A_PROFILE, most - all.kills);
      const found = await killLoop({
        kills: part,
        seed: seed + all.kills,
        engine,
        ...(asked >= LONG.kills ? { mostMs: LONG.mostMs } : {}),
      });
      assert.deepEqual([found.lost, found.uncopied, found.told], [0, 0, []]);
      assert.ok(found.acked > found.kills, 'hardly anything was acknowledged');
      all.kills += found.kills;
      all.acked += found.acked;
      if (most > A_PROFILE) console.log(`     ${all.kills} kills, ${all.acked} acknowledged, 0 lost`);
    }
    return `${all.kills} kills, ${all.acked} acknowledged, 0 lost, seed ${seed}`;
  },
}));

const durable: readonly FaultCase[] = [
  {
    name: 'planted: saved too early',
    run: async ({ seed }) => {
      const found = await killLoop({
        kills: 12,
        seed,
        engine: 'leveldb',
        plant: 'saved too early',
        untilLost: true,
      });
      assert.ok(found.lost > 0, `the kill loop did not see it in ${found.acked} acknowledged`);
      return `caught, ${found.lost} of ${found.acked} lost`;
    },
  },
  {
    name: 'disk: both copies are flushed for each entry',
    run: async () => {
      if (!canTrace()) return null;
      const { writes, store, copy } = await countSyncs('none');
      assert.ok(store >= writes && copy >= writes, `${store} and ${copy} flushes for ${writes} writes`);
      return `${writes} writes, ${store} flushes of the store, ${copy} of the copy`;
    },
  },
  {
    name: 'planted: copy not flushed',
    run: async () => {
      if (!canTrace()) return null;
      const { writes, copy } = await countSyncs('copy not flushed');
      assert.ok(copy < writes, 'the count of flushes did not see it');
      return `caught, ${copy} flushes of the copy for ${writes} writes`;
    },
  },
  {
    name: 'planted: store not strict',
    run: async () => {
      if (!canTrace()) return null;
      const { writes, store } = await countSyncs('store not strict');
      assert.ok(store < writes, 'the count of flushes did not see it');
      return `caught, ${store} flushes of the store for ${writes} writes`;
    },
  },
];

const tabs: readonly FaultCase[] = [
  {
    name: 'two tabs at once keep one chain',
    run: async () => {
      const found = await twoTabs('none');
      assert.deepEqual(found, { acked: 240, stored: 240, copied: 240, faults: [] });
      return `${found.acked} acknowledged, stored and copied, no fault`;
    },
  },
  {
    name: 'planted: two transactions',
    run: async () => {
      const { faults } = await twoTabs('two transactions');
      assert.ok(faults.includes('fork'), 'the check of the chains did not see it');
      return `caught, ${faults.length} faults`;
    },
  },
];

const damages: readonly FaultCase[] = ENGINES.flatMap((engine) =>
  DAMAGES.filter(({ engines }) => engines.includes(engine)).map((damage) => ({
    name: `damage (${engine}): ${damage.name}`,
    run: async () => {
      const found = await damaged(damage, engine);
      assert.equal(verdict(damage, found), null);
      const said = found.start.code === 'ready' ? found.start.told : found.start;
      return `${found.begun ? 'begun from the copy, ' : ''}${found.kept} of ${found.acked} kept, told ${JSON.stringify(said)}, faults ${found.faultsAfter.join() || 'none'}`;
    },
  })),
);

const open: readonly FaultCase[] = [
  { name: 'open: transactions are strict', run: whileOpen.strict },
  { name: 'open: what screens read follows what was appended', run: whileOpen.hooks },
  { name: 'open: nothing is shown that was refused', run: whileOpen.shownUncommitted },
  { name: 'open: store cleared, then an append', run: () => whileOpen.cleared('indexeddb') },
  { name: 'open: copy cleared, then an append', run: () => whileOpen.cleared('file_systems') },
  { name: 'open: all cleared, then an append', run: () => whileOpen.cleared('all') },
  { name: 'closed: store cleared', run: () => whileOpen.clearedAndClosed('indexeddb', 'all') },
  {
    name: 'closed: store and copy cleared',
    run: () => whileOpen.clearedAndClosed('indexeddb,file_systems', 'lost'),
  },
  { name: 'open: connection lost twice', run: () => whileOpen.connectionLost(2) },
  { name: 'open: connection lost for long', run: () => whileOpen.connectionLost(40) },
  { name: 'open: answer of the store lost', run: whileOpen.answerLost },
  { name: 'open: quota used up', run: roomAndTime.quota },
  { name: 'open: disk full', run: fullDisk.diskFull },
  { name: 'open: disk full, written on until refused', run: fullDisk.writtenUntilRefused },
  { name: 'closed: started on a full disk', run: fullDisk.startedFull },
  { name: 'closed: started on a full disk, nothing held back', run: fullDisk.startedFullWithoutReserve },
  { name: 'open: clock 400 days behind', run: () => whileOpen.clock(-400) },
  { name: 'open: clock 400 days ahead', run: () => whileOpen.clock(400) },
  { name: 'open: files of the copy are gathered', run: roomAndTime.gathered },
  { name: 'open: many entries are checked', run: ({ entries }) => roomAndTime.manyEntries(entries) },
  { name: 'open: saved in time', run: roomAndTime.latency },
];

export const cases: readonly FaultCase[] = [...kills, ...durable, ...tabs, ...open, ...damages];
