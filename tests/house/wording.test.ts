import { expect, test } from 'vitest';
import { code, lines, sources } from './sources.ts';

const NEGATION = /\b(not|no|never|nothing|none|cannot|neither|nor|without|\w+n['’]t)\b[^.!?]*$/i;

/** Each place in a text where something is called safe, with the part of its sentence that stands before. */
function calledSafe(text: string): string[] {
  return [...text.matchAll(/\b(?:un)?safe\b/gi)]
    .map(({ index }) => text.slice(Math.max(0, index - 160), index))
    .filter((before) => !NEGATION.test(before));
}

test('the app calls nothing safe: the word stands only in a negation', () => {
  const shown = ['src/words', 'src/screens', 'src/ui', 'src/app', 'public'].flatMap((at) =>
    sources(at, /\.(tsx?|html|json|webmanifest)$/),
  );
  const found = shown.flatMap(({ path, text }) =>
    calledSafe(code(text)).map((before) => `${path}: …${before.slice(-60)}safe`),
  );
  expect(found).toEqual([]);
  expect(calledSafe('It does not make food safe. This piece is safe.')).toHaveLength(1);
});

test('no markup is made from text, and no text is run', () => {
  expect(lines(sources('src'), /dangerouslySetInnerHTML|innerHTML|\beval\(|new Function\(/)).toEqual([]);
});
