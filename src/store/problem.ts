/** Why something was not stored, as a code; screens have the words. */
export type StoreProblem =
  | { readonly code: 'bad-draft'; readonly field: string }
  | { readonly code: 'full' }
  | { readonly code: 'connection-lost' }
  | { readonly code: 'blocked' }
  | { readonly code: 'newer-open' }
  | { readonly code: 'not-checked-yet' }
  | { readonly code: 'unreadable' }
  | { readonly code: 'other'; readonly text: string };

const FULL = /quota|disk|no space|full/i;
const LOST = /connection|closing|closed|backing store|server lost|transaction was aborted/i;
const LOST_NAMES = new Set([
  'AbortError',
  'DatabaseClosedError',
  'InvalidStateError',
  'TimeoutError',
  'TransactionInactiveError',
  'UnknownError',
  'OpenFailedError',
]);

/** Browsers put the cause at different depths: the error, its `inner`, its `cause`, or only in the message. */
export function problemOf(error: unknown): StoreProblem {
  const all = causes(error);
  const says = (pattern: RegExp) => all.some(({ name, message }) => pattern.test(`${name} ${message}`));
  const named = (name: string) => all.some((each) => each.name === name);
  if (named('QuotaExceededError') || says(FULL)) return { code: 'full' };
  if (named('VersionError')) return { code: 'newer-open' };
  if (named('NotReadableError') || named('DataError')) return { code: 'unreadable' };
  if (says(LOST) || all.some(({ name }) => LOST_NAMES.has(name))) return { code: 'connection-lost' };
  return { code: 'other', text: all.map(({ name, message }) => `${name}: ${message}`).join(' < ') };
}

function causes(error: unknown, depth = 0): { name: string; message: string }[] {
  if (typeof error !== 'object' || error === null || depth > 4) return [];
  const { name, message, inner, cause } = error as {
    name?: unknown;
    message?: unknown;
    inner?: unknown;
    cause?: unknown;
  };
  return [{ name: String(name), message: String(message) }, ...causes(inner ?? cause, depth + 1)];
}
