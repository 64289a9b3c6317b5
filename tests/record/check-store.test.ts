import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkStore, type StoreFound } from '#record/check-store.ts';
import { deviceOf, writer } from './make.ts';

const own = deviceOf(1);
const book = writer();
for (let number = 0; number < 10; number++)
  book.write('noted', 'batch:a', { text: `${number}` }, { device: own });
const all = [...book.lines];
const last = all[9];
const sentinel = { device: own, lastSeq: 10, lastHash: last?.hash ?? '', count: 10 };

const found = (more: Partial<StoreFound>): StoreFound => ({
  stored: all,
  damaged: [],
  copied: all,
  remembered: [],
  sentinel,
  device: own,
  ...more,
});

describe('the check of the store', () => {
  it('finds nothing to do when both copies and the witness agree', () => {
    expect(checkStore(found({}))).toMatchObject({
      state: 'sound',
      restore: [],
      recopy: [],
      missing: 0,
      newDevice: false,
    });
  });

  it('calls it a first start only when nothing says otherwise', () => {
    const nothing = { stored: [], copied: [], device: null };
    expect(checkStore(found({ ...nothing, sentinel: null })).state).toBe('first');
    expect(checkStore(found({ ...nothing })).state).toBe('lost');
    expect(checkStore(found({ ...nothing, sentinel: null, damaged: [own] })).state).toBe('lost');
    expect(checkStore(found({ stored: [], device: null, sentinel: null })).state).toBe('repaired');
  });

  it('brings both copies to the same lines, whatever either lost, and never goes on with a chain that it mended', () => {
    fc.assert(
      fc.property(fc.subarray(all), fc.subarray(all), (stored, copied) => {
        const check = checkStore(found({ stored, copied }));
        const hashes = (lines: readonly { hash: string }[]) => new Set(lines.map(({ hash }) => hash));
        const union = hashes([...stored, ...copied]);
        expect(hashes([...stored, ...check.restore])).toEqual(union);
        expect(hashes([...copied, ...check.recopy])).toEqual(union);
        expect(check.missing).toBe(10 - union.size);
        if (check.restore.length > 0 && check.state !== 'lost') expect(check.newDevice).toBe(true);
        if (union.size < 10 && union.size > 0) expect(check.newDevice).toBe(true);
      }),
    );
  });

  it('is not alarmed by a witness that lags behind', () => {
    const lagging = { device: own, lastSeq: 7, lastHash: all[6]?.hash ?? '', count: 7 };
    expect(checkStore(found({ sentinel: lagging }))).toMatchObject({
      state: 'sound',
      missing: 0,
      newDevice: false,
    });
  });

  it('tells a store that holds another end than the witness saw, though it is as long', () => {
    const other = { ...sentinel, lastHash: 'f'.repeat(64) };
    expect(checkStore(found({ sentinel: other }))).toMatchObject({
      state: 'short',
      missing: 1,
      newDevice: true,
    });
  });

  it('works with one copy', () => {
    expect(checkStore(found({ copied: null }))).toMatchObject({ state: 'sound', recopy: [] });
  });
});
