import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { handDown, handOver } from '#files/hand-over.ts';
import { readPicked, textOf } from '#files/pick-file.ts';

const FILE = { name: 'batch-12.csv', mime: 'text/csv', content: 'a,b\r\n' };
const link = { href: '', download: '', click: vi.fn(), remove: vi.fn() };
const append = vi.fn();

type Able = { share?: (data: ShareData) => Promise<void>; canShare?: () => boolean };

/** A browser as far as handing over needs one. */
function browser(able: Able = {}) {
  vi.stubGlobal('navigator', able);
  vi.stubGlobal('document', { createElement: () => link, body: { append } });
}

const refuses = (error: Error) => () => Promise.reject(error);
const DOWNLOADS: readonly (readonly [string, Able])[] = [
  ['there is no share sheet', {}],
  ['it takes texts only', { share: refuses(new Error('not asked')), canShare: () => false }],
  ['it cannot be asked', { share: refuses(new Error('not asked')) }],
  ['it refuses this kind', { share: refuses(new DOMException('', 'NotAllowedError')), canShare: () => true }],
  ['it fails', { share: refuses(new Error('broken')), canShare: () => true }],
];

beforeEach(() => {
  vi.useFakeTimers();
  vi.clearAllMocks();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('a file to hand over', () => {
  it('goes to the share sheet where files can be shared, with its name, kind and content', async () => {
    const shared: File[] = [];
    browser({ share: async ({ files = [] }) => void shared.push(...files), canShare: () => true });
    expect(await handOver(FILE)).toBe('shared');
    expect(shared.map(({ name, type }) => [name, type])).toEqual([['batch-12.csv', 'text/csv']]);
    expect(await shared[0]?.text()).toBe('a,b\r\n');
    expect(link.click).not.toHaveBeenCalled();
  });

  it('does not become a download behind the back of somebody who closed the share sheet', async () => {
    browser({ share: () => Promise.reject(new DOMException('', 'AbortError')), canShare: () => true });
    expect(await handOver(FILE)).toBe('share-cancelled');
    expect(link.click).not.toHaveBeenCalled();
  });

  it.each(DOWNLOADS)('is a download where %s', async (_, able) => {
    browser(able);
    expect(await handOver(FILE)).toBe('download-begun');
    expect(link.download).toBe('batch-12.csv');
    expect(link.click).toHaveBeenCalledOnce();
    expect(link.remove).toHaveBeenCalledOnce();
  });

  it('is let go of after the browser had time to save it, and not before', async () => {
    browser();
    const revoke = vi.spyOn(URL, 'revokeObjectURL');
    expect(handDown({ ...FILE, content: new Uint8Array([1, 2, 3]) })).toBe('download-begun');
    vi.advanceTimersByTime(30_000);
    expect(revoke).not.toHaveBeenCalled();
    vi.advanceTimersByTime(60_000);
    expect(revoke).toHaveBeenCalledExactlyOnceWith(link.href);
  });

  it('says so when the browser can do neither', async () => {
    browser();
    vi.spyOn(URL, 'createObjectURL').mockImplementation(() => {
      throw new Error('no');
    });
    expect(await handOver(FILE)).toBe('not-possible');
  });
});

describe('a file that was picked', () => {
  it('is read when it is of a bearable size', async () => {
    const picked = await readPicked(new File(['12,5'], 'log.csv'), { mostBytes: 4 });
    expect(picked).toEqual({ ok: true, name: 'log.csv', bytes: new TextEncoder().encode('12,5') });
  });

  it('is refused before it is read when it is too large, and when nothing is in it', async () => {
    const file = new File(['12,55'], 'log.csv');
    const read = vi.spyOn(file, 'arrayBuffer');
    expect(await readPicked(file, { mostBytes: 4 })).toEqual({ ok: false, code: 'too-large' });
    expect(read).not.toHaveBeenCalled();
    expect(await readPicked(new File([], 'log.csv'), { mostBytes: 4 })).toEqual({ ok: false, code: 'empty' });
  });

  it('that went away under the hand is told of', async () => {
    const file = new File(['12,5'], 'log.csv');
    vi.spyOn(file, 'arrayBuffer').mockRejectedValue(new DOMException('', 'NotReadableError'));
    expect(await readPicked(file, { mostBytes: 10 })).toEqual({ ok: false, code: 'unreadable' });
  });

  it('is text only if all of it is UTF-8', () => {
    expect(textOf(new TextEncoder().encode('\uFEFFsüß'))).toBe('süß');
    expect(textOf(new Uint8Array([0x73, 0xfc]))).toBeNull();
  });
});
