/** When something was true, if that is not now. Pure. */
export type ReadWhen = { ok: true; atMs: number | null } | { ok: false; problem: 'empty' | 'ahead' };

/** A field's local date and time; null in the field means now. A reading is never of the future. */
export function readWhen(text: string | null, nowMs: number): ReadWhen {
  if (text === null) return { ok: true, atMs: null };
  const atMs = new Date(text).getTime();
  if (!Number.isFinite(atMs)) return { ok: false, problem: 'empty' };
  return atMs > nowMs ? { ok: false, problem: 'ahead' } : { ok: true, atMs };
}

/** An instant as the phone's own picker wants it, local to where the maker stands. */
export function localText(atMs: number): string {
  const local = new Date(atMs - new Date(atMs).getTimezoneOffset() * 60_000);
  return local.toISOString().slice(0, 16);
}
