import { describe, expect, test } from 'vitest';
import { sources } from './sources.ts';

const modules = import.meta.glob<Record<string, unknown>>('/src/core/**/*.ts');
const FUNCTION = /(?:\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*)?^export (?:async )?function (\w+)/gm;

/** Tells of the numbers in a result to nine places, so that an example can be written down. */
function near(result: unknown): unknown {
  if (typeof result === 'number') return expect.closeTo(result, 9);
  if (Array.isArray(result)) return result.map(near);
  if (result === null || typeof result !== 'object') return result;
  return Object.fromEntries(Object.entries(result).map(([name, part]) => [name, near(part)]));
}

for (const { path, text } of sources('src/core')) {
  const functions = [...text.matchAll(FUNCTION)];
  describe.runIf(functions.length > 0)(path, () => {
    for (const [, doc = '', name = ''] of functions) {
      const examples = [...doc.matchAll(/@example (.+?) \/\/ => (.+)/g)];
      test(`${name} shows what it gives`, async () => {
        expect(examples.length, `${name} has no @example`).toBeGreaterThan(0);
        const scope = (await modules[`/${path}`]?.()) ?? {};
        const run = (code: string): unknown =>
          new Function(...Object.keys(scope), `return (${code});`)(...Object.values(scope));
        for (const [, expression = '', result = ''] of examples)
          expect(run(expression), expression).toEqual(near(run(result)));
      });
    }
  });
}
