/** Two pages of one browser append at once. */
import { dropProfile, launch, newProfile, pageUrl, tab } from './browser.ts';
import type { PlantName } from './build.ts';

export type TwoTabs = {
  readonly acked: number;
  readonly stored: number;
  readonly copied: number;
  readonly faults: readonly string[];
};

export async function twoTabs(plant: PlantName): Promise<TwoTabs> {
  const profile = newProfile();
  const context = await launch(profile);
  const url = await pageUrl(plant);
  const pages = [await tab(context, url), await tab(context, url)];
  for (const page of pages) await page.evaluate(() => window.store.startCheck());
  const counts = await Promise.all(
    pages.map((page) =>
      page.evaluate(async () => {
        const all = await Promise.all(
          Array.from({ length: 60 }, (_, number) => window.store.write([`one ${number}`, `two ${number}`])),
        );
        return all.reduce((sum, appended) => sum + (appended.ok ? appended.entries.length : 0), 0);
      }),
    ),
  );
  const third = await tab(context, url);
  const seen = await third.evaluate(async () => {
    await window.store.startCheck();
    const { faults } = await window.store.health();
    const { stored, copied } = await window.store.held();
    return { stored: stored.length, copied: copied?.length ?? 0, faults: faults.map((fault) => fault.code) };
  });
  await context.close();
  dropProfile(profile);
  return { acked: counts.reduce((a, b) => a + b, 0), ...seen };
}
