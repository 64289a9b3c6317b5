const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);
const MAX_DEPTH = 8;

/** Whether parsed JSON is shallow and free of keys that could reach a prototype. Checked before any schema sees it. */
export function plain(value: unknown, depth = 0): boolean {
  if (typeof value !== 'object' || value === null) return true;
  if (depth >= MAX_DEPTH) return false;
  if (Array.isArray(value)) return value.every((item) => plain(item, depth + 1));
  return Object.entries(value).every(([key, item]) => !FORBIDDEN.has(key) && plain(item, depth + 1));
}
