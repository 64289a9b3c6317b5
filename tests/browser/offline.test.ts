import { axe, expect, keptOnPhone, test } from './support/fixtures.ts';

const heading = { level: 1 } as const;

for (const at of ['/', '/a/b/']) {
  test.describe(`under ${at}`, () => {
    test.use({ at });

    test('once opened, the app starts again with its server stopped, also at a deep link', async ({
      page,
      server,
    }) => {
      await page.goto('./');
      await expect(page.getByRole('heading', heading)).toBeVisible();
      await keptOnPhone(page);
      await server.stop();

      await page.reload();
      await expect(page.getByRole('heading', heading)).toBeVisible();

      const another = await page.context().newPage();
      await another.goto('./?from=a-calendar#/kit');
      await expect(another.getByRole('heading', heading)).toBeVisible();
    });
  });
}

test('a phone that was switched off starts without a signal', async ({ profile, server }) => {
  const before = await (await profile.open()).newPage();
  await before.goto('./');
  await keptOnPhone(before);
  await server.stop();

  const after = await (await profile.open()).newPage();
  await after.goto('./#/formulas');
  await expect(after.getByRole('heading', heading)).toBeVisible();
});

test('every file of the build is on the phone, byte for byte as built', async ({ page, server }) => {
  await page.goto('./');
  await keptOnPhone(page);
  const kept = await page.evaluate(async () => {
    const [name = ''] = await caches.keys();
    return (await (await caches.open(name)).keys()).map(({ url }) => url);
  });
  const listed = await (await fetch(`${server.url}service-worker.js`)).text();
  const paths = [...listed.matchAll(/\["([^"]+)","sha256-/g)].map(
    ([, path = '']) => new URL(path, server.url).href,
  );
  expect(new Set(kept)).toEqual(new Set(paths));
});

test('the first page has no fault that axe can find', async ({ page }) => {
  await page.goto('./');
  await expect(page.getByRole('heading', heading)).toBeVisible();
  await axe(page);
});
