import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { batch } from '#record/batch.ts';
import { readFile, writeFile } from '#record/file.ts';
import { bodySchema, type Kind } from '#record/kinds.ts';
import { unseal } from '#store/sealed.ts';
import { BODIES, everyKind, NEWEST } from './every-kind.ts';
import { freshDevice, openPage } from './fresh-store.ts';

const FOLDER = 'fixtures/backups';
const names = readdirSync(FOLDER).filter((name) => name.endsWith('.txt'));
const plain = names.filter((name) => !name.includes('sealed'));

/** Every backup that a released version ever wrote. Files are added here and never changed. */
describe('a backup of an older version', () => {
  it('is there for each version', () => {
    expect(plain.length).toBeGreaterThan(0);
  });

  it('holds every kind in every version, and the newest is what this build writes', () => {
    const entries = plain.flatMap((name) => readFile(readFileSync(`${FOLDER}/${name}`, 'utf8')).lines);
    const there = new Set(entries.map(({ entry }) => `${entry.kind} ${entry.v}`));
    const asked = (Object.keys(BODIES) as Kind[]).flatMap((kind) =>
      [1, 2, 3].filter((v) => bodySchema(kind, v) !== null).map((v) => `${kind} ${v}`),
    );
    expect(asked.length).toBeGreaterThan(50);
    expect(asked.filter((each) => !there.has(each))).toEqual([]);
    expect(bodySchema('noted', 3) ?? bodySchema('batch-opened', 3)).toBe(null);
    // A kind that is new takes a new file, written by every-kind.ts; none that is there is written again.
    expect(readFileSync(NEWEST, 'utf8')).toBe(everyKind());
  });

  it.each(plain)('%s reads whole, and its entries are written again byte for byte', (name) => {
    const text = readFileSync(`${FOLDER}/${name}`, 'utf8');
    const file = readFile(text);
    expect(file.problems).toEqual([]);
    expect(file.faults).toEqual([]);
    const again = writeFile(file.lines, { build: 'now', madeAtMs: 0, device: '' }).text;
    expect(again.split('\n').slice(1, -2)).toEqual(text.split('\n').slice(1, -2));
  });

  it.each(plain)(
    '%s taken in on a new phone gives every batch as it was, and the same lines again',
    async (name) => {
      const text = readFileSync(`${FOLDER}/${name}`, 'utf8');
      const then = readFile(text).lines.map(({ entry }) => entry);
      freshDevice();
      const page = await openPage();
      await page.startCheck();
      const plan = await page.planImport(text);
      expect(plan).toMatchObject({
        ok: true,
        unknown: then.filter(({ kind }) => kind === null).length,
        twins: [],
        problems: [],
        faults: [],
      });
      expect(await page.takeIn(plan)).toMatchObject({ ok: true, added: then.length });
      const again = await page.exportLog('now');
      expect(again.left).toEqual([]);
      expect(again.text.split('\n').slice(1, -2)).toEqual(text.split('\n').slice(1, -2));
      const now = readFile(again.text).lines.map(({ entry }) => entry);
      const batches = [
        ...new Set(then.map(({ subject }) => subject).filter((id) => id.startsWith('batch:'))),
      ];
      expect(batches.length).toBeGreaterThan(0);
      for (const id of batches) {
        const folded = batch(id, now);
        expect(folded).toEqual(batch(id, then));
        expect(folded).not.toBeNull();
      }
    },
  );

  it.each(names.filter((name) => name.includes('sealed')))('%s opens', async (name) => {
    const opened = await unseal(readFileSync(`${FOLDER}/${name}`, 'utf8'), 'demo passphrase');
    expect(opened.ok && readFile(opened.text).problems).toEqual([]);
  });
});
