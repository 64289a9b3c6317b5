import { readdirSync, readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';

/** Our own budget in bytes, gzip 9; a phone in a cellar with one bar has to fetch it once. Fonts and pictures apart. */
const LIMIT = { firstScripts: 150_000, firstStyles: 12_000, page: 2_000, lazyScript: 130_000 };

const page = readFileSync('dist/index.html', 'utf8');
const first = [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+)"/g)].map(([, path = '']) => path);
const lazy = readdirSync('dist/assets')
  .map((name) => `assets/${name}`)
  .filter((path) => path.endsWith('.js') && !first.includes(path));

const bytes = (path: string) => gzipSync(readFileSync(`dist/${path}`), { level: 9 }).length;
const sum = (paths: string[]) => paths.map(bytes).reduce((all, one) => all + one, 0);
const ending = (suffix: string) => first.filter((path) => path.endsWith(suffix));

function within(name: string, size: number, limit: number) {
  console.log(`${name}: ${size} of ${limit} bytes`);
  expect(size).toBeGreaterThan(0);
  expect(size).toBeLessThanOrEqual(limit);
}

test('the scripts that a first start waits for', () =>
  within('first scripts', sum(ending('.js')), LIMIT.firstScripts));
test('the styles that a first start waits for', () =>
  within('first styles', sum(ending('.css')), LIMIT.firstStyles));
test('the page itself', () => within('page', bytes('index.html'), LIMIT.page));
test('each part that is loaded later', () => {
  for (const path of lazy) within(path, bytes(path), LIMIT.lazyScript);
});
