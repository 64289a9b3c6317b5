import { readdirSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { BATCH, book, ferment, fileOf, openBatch, pieceId, START_MS, setUp, stuff } from '../screens/book.ts';
import { HOUR_MS, maker } from './maker.ts';
import { deployment } from './support/deployment.ts';
import { expect, keptOnPhone, test } from './support/fixtures.ts';

const id = BATCH.slice('batch:'.length);
/** Pieces hung and not weighed since; every figure is invented. */
const BOOK = ferment(stuff(openBatch(setUp(book(), { ruleSet: 'CA' }))));
const NOW_MS = START_MS + 72 * HOUR_MS;

/** Three builds on from the one under `dist`; the last writes a note in a shape that the others do not know. */
let later: readonly string[];
test.beforeAll(async () => {
  later = [
    await deployment('b'),
    await deployment('c'),
    await deployment('d', [
      {
        file: 'src/record/kinds.ts',
        from: 'const v2 = {',
        to: 'const v2 = { noted: z.strictObject({ text: text(2000), aloud: z.boolean() }),',
      },
      {
        file: 'src/screens/batch/BatchScreen.tsx',
        from: 'body: { text } }',
        to: 'body: { text, aloud: true } }',
      },
    ]),
  ];
});

const ask = (page: Page) =>
  page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));
/** The build that was kept last, once it is there whole. */
const kept = (page: Page) =>
  page.evaluate(async () => {
    const { installing } = await navigator.serviceWorker.ready;
    return installing ? 'on its way' : (await caches.keys()).at(-1)?.split(' ').at(-1);
  });
/** The build that the page runs, by the name of its first script: `b`, or nothing for the one under `dist`. */
const runs = (page: Page) =>
  page.evaluate(() => /assets\/(?:([bcd])-)?index/.exec(document.scripts[0]?.src ?? '')?.[1] ?? 'a');
const newer = (page: Page) => page.getByText('A newer version is here.');
const typed = (page: Page) => page.locator('[data-typed]');

/** Every line that is stored, by who wrote it and which number it has. */
const lines = (page: Page) =>
  page.evaluate(async () => {
    const opened = indexedDB.open('greenweight');
    await new Promise((done) => opened.addEventListener('success', done));
    const asked = opened.result.transaction('entries').objectStore('entries').getAll();
    await new Promise((done) => asked.addEventListener('success', done));
    opened.result.close();
    return (asked.result as { line: string }[]).map(({ line }) => line).sort();
  });

test('three deployments pass a tab by that is left open with a weight half typed, and one is taken back', async ({
  page: old,
  context,
  server,
}) => {
  test.setTimeout(120_000);
  const missing: string[] = [];
  await context.exposeFunction('partIsMissing', (text: string) => missing.push(text));
  await context.addInitScript(() => {
    window.addEventListener('vite:preloadError', ({ payload }) =>
      (window as unknown as { partIsMissing(text: string): void }).partIsMissing(String(payload)),
    );
  });
  await context.clock.setFixedTime(NOW_MS);
  const me = maker(old);
  await me.takeIn(fileOf(BOOK));
  await keptOnPhone(old);
  await me.go(`/batches/${id}/round`);
  await me.keys('77');
  await old.evaluate(() => Object.assign(window, { neverReloaded: true }));

  await test.step('two newer builds wait, and nothing is disturbed', async () => {
    for (const [at, build] of ['b', 'c'].entries()) {
      server.deploy(later[at] ?? '');
      await ask(old);
      await expect.poll(() => kept(old)).toBe(build);
      await expect(newer(old)).toBeVisible();
      await expect(typed(old)).toHaveText('77');
    }
    await me.keys('4');
    await me.press('Save, next is 2');
    await expect(old.getByText('piece 2 of 4')).toBeVisible();
    // Parts that this tab never asked for, and that no server has any more.
    await me.go(`/batches/${id}/record`);
    await expect(old.getByRole('cell', { name: /774/ }).first()).toBeAttached();
    await me.go('/formulas/new');
    await me.go(`/batches/${id}/round`);
    await me.keys('76');
  });

  const other = await context.newPage();
  const them = maker(other);
  await test.step('a third is taken in another tab: the old one keeps its weight, its code and its files', async () => {
    server.deploy(later[2] ?? '');
    await ask(old);
    await expect.poll(() => kept(old)).toBe('d');
    await them.go(`/batches/${id}`);
    await them.press('Reload now');
    await expect.poll(() => runs(other).catch(() => '')).toBe('d');
    // As long as a tab looks whether it may reload, and longer.
    await old.waitForTimeout(2500);
    await expect(typed(old)).toHaveText('76');
    expect(await runs(old)).toBe('a');
    expect(await old.evaluate(() => 'neverReloaded' in window)).toBe(true);
    const parts = readdirSync('dist/assets').map((name) => `assets/${name}`);
    const answers = await old.evaluate(
      (paths) => Promise.all(paths.map(async (path) => (await fetch(`./${path}`)).ok)),
      parts,
    );
    expect(parts.filter((_, at) => !answers[at])).toEqual([]);
  });

  await test.step('both write at the same moment', async () => {
    await them.press('Write a note');
    await them.sheet.getByLabel('What is worth remembering').fill('by the newest');
    await me.keys('8');
    await Promise.all([me.press('Save, next is 3'), them.save()]);
    // Nothing is half typed any more, so that the tab takes the build that the maker asked for in the other one.
    await expect.poll(() => runs(old).catch(() => '')).toBe('d');
    await them.go(`/batches/${id}/record`);
    await expect(other.getByRole('cell', { name: /by the newest/ })).toHaveCount(1);
    for (const grams of [/774/, /768/])
      await expect(other.getByRole('cell', { name: grams }).first()).toBeAttached();
    await expect(other.getByText('cannot be read here')).toHaveCount(0);
  });

  const before = await lines(other);
  await test.step('the third is taken back: what it wrote is kept and said to be unread', async () => {
    server.deploy('dist');
    await ask(other);
    await them.press('Reload now');
    for (const page of [old, other]) await expect.poll(() => runs(page).catch(() => '')).toBe('a');
    await them.go(`/batches/${id}/record`);
    await expect(other.getByText(/noted \(from a newer version/)).toHaveCount(1);
    await me.go(`/batches/${id}/round`);
    await me.keys('781');
    await me.press('Save, next is 4');
    await expect(old.getByText('piece 4 of 4')).toBeVisible();
  });

  const after = await lines(other);
  expect(before.filter((line) => !after.includes(line))).toEqual([]);
  const written = after
    .map((line) => JSON.parse(line))
    .filter(({ id: own }) => !BOOK.entries.some((entry) => entry.id === own))
    .sort((one, two) => one.seq - two.seq);
  expect(written.map(({ kind, v, subject }) => `${kind} ${v} ${subject}`)).toEqual(
    expect.arrayContaining([
      `weighed 1 ${pieceId(1)}`,
      `weighed 1 ${pieceId(2)}`,
      `noted 2 ${BATCH}`,
      `weighed 1 ${pieceId(3)}`,
    ]),
  );
  await them.go('/kit/keeping');
  await them.press('Check now');
  await expect(other.getByText('Checked just now.')).toBeVisible();
  const held = (label: string) => other.getByText(label, { exact: true }).locator('xpath=following::dd[1]');
  await expect(held('Chains')).toHaveText('whole');
  await expect(held('Copies on this phone')).toContainText('two, and equal');
  expect(missing, 'parts that could not be loaded').toEqual([]);
});
