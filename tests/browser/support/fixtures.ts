import { mkdirSync, rmSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import { test as base, expect, type Page } from '@playwright/test';
import { type AppServer, appServer } from './app-server.ts';
import { newProfile, type Profile } from './profile.ts';
import { newWatch, type Watch } from './watch.ts';

export { expect };

type Fixtures = {
  /** The path that the app lies under; `test.use({ at: '/a/b/' })` for another. */
  at: string;
  /** A server, and so an origin, of the test's own. `page.goto('./#/kit')` starts from its address. */
  server: AppServer;
  watched: Watch;
  /** For tests that close and start the whole browser; watched like `page`. */
  profile: Profile;
};

/** Every test fails on whatever was noted behind its back (see watch.ts). */
export const test = base.extend<Fixtures>({
  at: ['/', { option: true }],
  server: async ({ at }, use) => {
    const server = await appServer(at);
    await use(server);
    await server.stop();
  },
  baseURL: async ({ server }, use) => use(server.url),
  watched: async ({ server }, use) => {
    const watched = newWatch(server.url);
    await use(watched);
    expect(watched.complaints, 'what the page did behind the back of the test').toEqual([]);
  },
  context: async ({ context, watched }, use) => {
    await watched.over(context);
    await use(context);
  },
  profile: async ({ launchOptions, viewport, server, watched }, use) => {
    const profile = newProfile({ ...launchOptions, viewport, baseURL: server.url }, watched.over);
    await use(profile);
    await profile.close();
    rmSync(profile.folder, { recursive: true, force: true, maxRetries: 5 });
  },
});

/** Waits until the app is on the phone whole and answers from there. */
export async function keptOnPhone(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (navigator.serviceWorker.controller) return;
    await new Promise((controlled) =>
      navigator.serviceWorker.addEventListener('controllerchange', controlled, { once: true }),
    );
  });
}

/** Axe over the page as it stands. The app has no frames, so the page itself may finish the run: a third of the time. */
export const asksOf = (page: Page): AxeBuilder => new AxeBuilder({ page }).setLegacyMode();

/** Asks WCAG 2.2 A and AA of the page as it stands. */
export async function axe(page: Page): Promise<void> {
  const standards = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
  const { violations } = await asksOf(page).withTags(standards).analyze();
  const found = violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id}: ${help}\n  ${target.join(' ')}\n  ${failureSummary}`),
  );
  expect(found.join('\n\n')).toBe('');
}

/** A picture of the whole page for people to look at, in .tmp/pictures. Nothing is compared with it. */
export async function picture(page: Page, name: string): Promise<void> {
  mkdirSync('.tmp/pictures', { recursive: true });
  await page.screenshot({ path: `.tmp/pictures/${name}.png`, fullPage: true });
}
