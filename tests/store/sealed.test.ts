import { describe, expect, it } from 'vitest';
import { ITERATIONS, seal, unseal } from '#store/sealed.ts';

const TEXT = `${'ü 🐖 '.repeat(30_000)}end`;

describe('a sealed backup', () => {
  it('opens with its passphrase to the same text, and with no other', async () => {
    const file = await seal(TEXT, 'salt and smoke');
    expect(file.split('\n')[1]).toMatch(/^[A-Za-z0-9+/]+=*$/);
    expect(await unseal(file, 'salt and smoke')).toEqual({ ok: true, text: TEXT });
    expect(await unseal(file, 'salt and smoky')).toEqual({
      ok: false,
      problem: 'wrong-passphrase-or-changed',
    });
  });

  it('is never sealed the same way twice', async () => {
    expect(await seal('a', 'salt and smoke')).not.toBe(await seal('a', 'salt and smoke'));
  });

  it('is refused when a byte of it, or of how it says it was sealed, was changed', async () => {
    const file = await seal('12 g of salt', 'salt and smoke');
    const at = file.indexOf('\n') + 3;
    const other = file[at] === 'A' ? 'B' : 'A';
    for (const changed of [
      file.slice(0, at) + other + file.slice(at + 1),
      file.replace(`"iterations":${ITERATIONS}`, `"iterations":${ITERATIONS + 1}`),
    ]) {
      expect(await unseal(changed, 'salt and smoke')).toEqual({
        ok: false,
        problem: 'wrong-passphrase-or-changed',
      });
    }
  });

  it('is refused with fewer iterations than are asked for, and when it is none of ours', async () => {
    const file = await seal('a', 'salt and smoke');
    for (const changed of [file.replace(`${ITERATIONS}`, '1000'), '', 'a;b\nc;d', '{}\n']) {
      expect(await unseal(changed, 'salt and smoke')).toEqual({ ok: false, problem: 'not-sealed' });
    }
  });

  it('asks for 600,000 iterations or more', () => {
    // OWASP Password Storage Cheat Sheet: PBKDF2-HMAC-SHA256 with 600,000 iterations (from memory, medium).
    expect(ITERATIONS).toBeGreaterThanOrEqual(600_000);
  });

  it('asks for a passphrase of some length', async () => {
    await expect(seal('a', 'short')).rejects.toThrow(RangeError);
  });
});
