import { cpSync, readdirSync, writeFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { buildPage } from './support/build-page.ts';
import { expect, keptOnPhone, test } from './support/fixtures.ts';

let first: string;
let second: string;
test.beforeAll(async () => {
  first = await buildPage('first');
  second = await buildPage('second');
});
test.beforeEach(async ({ page, server }) => {
  server.deploy(first);
  await page.goto('./');
  await keptOnPhone(page);
});

const take = (page: Page) => page.getByRole('button', { name: 'take the new version' });
const openPart = (page: Page) => page.getByRole('button', { name: 'open a part' }).click();
const ask = (page: Page) =>
  page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update().catch(() => null)));
const builds = (page: Page) =>
  page.evaluate(async () => (await caches.keys()).map((name) => name.split(' ').at(-1)));

test('a new version waits until it is taken, and then leaves nothing of the old one', async ({
  page,
  server,
}) => {
  server.deploy(second);
  await ask(page);
  await expect(take(page)).toBeVisible();
  await page.reload();
  await expect(page.getByRole('heading')).toHaveText('first');

  await take(page).click();
  await expect(page.getByRole('heading')).toHaveText('second');
  await expect.poll(() => builds(page)).toEqual(['second']);
});

test('an entry half typed in another tab is not reloaded away, and that tab still finds its parts', async ({
  page,
  context,
  server,
}) => {
  await page.getByLabel('entry').fill('48.');
  const other = await context.newPage();
  await other.goto('./');
  server.deploy(second);
  await ask(other);
  await take(other).click();
  await expect(other.getByRole('heading')).toHaveText('second');

  await openPart(page);
  await expect(page.getByRole('status')).toHaveText('a part of first');
  await expect(page.getByLabel('entry')).toHaveValue('48.');
  expect(await builds(page)).toEqual(['first', 'second']);

  await page.getByLabel('entry').fill('');
  await expect(page.getByRole('heading')).toHaveText('second');
  await expect.poll(() => builds(page)).toEqual(['second']);
});

test('a deployment with one wrong file is not taken in; put right, it is', async ({ page, server }) => {
  const broken = `${second}-broken`;
  cpSync(second, broken, { recursive: true });
  const [part = ''] = readdirSync(`${broken}/assets`).filter((name) => name.startsWith('lazy'));
  writeFileSync(`${broken}/assets/${part}`, '<!doctype html><title>log in to this network</title>');
  server.deploy(broken);
  await ask(page);
  await expect(take(page)).toBeHidden();
  await page.reload();
  await openPart(page);
  await expect(page.getByRole('status')).toHaveText('a part of first');

  server.deploy(second);
  await ask(page);
  await take(page).click();
  await expect(page.getByRole('heading')).toHaveText('second');
});

test('a version that is taken back is an update like any other', async ({ page, server }) => {
  for (const [folder, id] of [
    [second, 'second'],
    [first, 'first'],
  ] as const) {
    server.deploy(folder);
    await ask(page);
    await take(page).click();
    await expect(page.getByRole('heading')).toHaveText(id);
  }
});

test('a part that is gone everywhere reloads the page once, into the version that is there', async ({
  page,
  server,
  watched,
}) => {
  watched.allow(/status of 404/);
  server.deploy(second);
  await page.evaluate(async () => Promise.all((await caches.keys()).map((name) => caches.delete(name))));
  await (await page.context().newCDPSession(page)).send('Network.clearBrowserCache');
  await openPart(page);
  await expect(page.getByRole('heading')).toHaveText('second');
});
