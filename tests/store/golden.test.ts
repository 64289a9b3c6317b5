import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readFile, writeFile } from '#record/file.ts';
import { unseal } from '#store/sealed.ts';

const FOLDER = 'fixtures/backups';
const names = readdirSync(FOLDER).filter((name) => name.endsWith('.txt'));
const plain = names.filter((name) => !name.includes('sealed'));

/** Every backup that a released version ever wrote. Files are added here and never changed. */
describe('a backup of an older version', () => {
  it('is there for each version', () => {
    expect(plain.length).toBeGreaterThan(0);
  });

  it.each(plain)('%s reads whole, and its entries are written again byte for byte', (name) => {
    const text = readFileSync(`${FOLDER}/${name}`, 'utf8');
    const file = readFile(text);
    expect(file.problems).toEqual([]);
    expect(file.faults).toEqual([]);
    const again = writeFile(file.lines, { build: 'now', madeAtMs: 0, device: '' }).text;
    expect(again.split('\n').slice(1, -2)).toEqual(text.split('\n').slice(1, -2));
  });

  it.each(names.filter((name) => name.includes('sealed')))('%s opens', async (name) => {
    const opened = await unseal(readFileSync(`${FOLDER}/${name}`, 'utf8'), 'demo passphrase');
    expect(opened.ok && readFile(opened.text).problems).toEqual([]);
  });
});
