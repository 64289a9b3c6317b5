import { expect, test } from 'vitest';
import { code, lines, sources } from './sources.ts';

test('no clock and no dice below the store: time and chance are passed in', () => {
  const below = ['src/core', 'src/record', 'src/words'].flatMap((room) => sources(room));
  const bare = below.map(({ path, text }) => ({ path, text: code(text) }));
  expect(bare.length).toBeGreaterThan(5);
  const asks = /Date\.now\b|new Date\(\s*\)|\bDate\(\)|Math\.random|performance\.|randomUUID|getRandomValues/;
  expect(lines(bare, asks)).toEqual([]);
});
