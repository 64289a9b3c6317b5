import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, test } from './support/fixtures.ts';

/** Our own budget in bytes, gzip 9: what the page lists (150 kB, tests/built) and what comes after: the first words, the first screen, the worker of the second copy. */
const LIMIT = { scripts: 175_000, styles: 12_000 };

test('a first start fetches no more scripts and styles than a bad signal can carry', async ({
  page,
  server,
}) => {
  const fetched: string[] = [];
  page.on('request', (request) => {
    if (request.serviceWorker() === null) fetched.push(request.url().slice(server.url.length));
  });
  await page.goto('./');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.waitForLoadState('networkidle');

  const bytes = (ending: string) =>
    [...new Set(fetched)]
      .filter((path) => path.endsWith(ending))
      .reduce((sum, path) => sum + gzipSync(readFileSync(`dist/${path}`), { level: 9 }).length, 0);
  console.log(
    `first start: ${bytes('.js')} bytes of scripts, ${bytes('.css')} of styles, ${fetched.length} requests`,
  );
  expect(bytes('.js')).toBeGreaterThan(0);
  expect(bytes('.js')).toBeLessThanOrEqual(LIMIT.scripts);
  expect(bytes('.css')).toBeLessThanOrEqual(LIMIT.styles);
});
