/** Kills the browser while it writes, again and again on one profile, and looks whether what was acknowledged is there. */
import { dropProfile, type Engine, kill, launch, newProfile, pageUrl, tab } from './browser.ts';
import type { PlantName } from './build.ts';

export type Kills = {
  readonly kills: number;
  readonly acked: number;
  /** Acknowledged and not in the store after the next start. */
  readonly lost: number;
  /** Acknowledged and not in the second copy after the next start. */
  readonly uncopied: number;
  /** What the checks at the start told, other than that one copy was filled up from the other. */
  readonly told: readonly string[];
};

/** A small seeded generator, so that a run can be repeated: mulberry32. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A kill between the two copies leaves an entry in one of them, which was not acknowledged; the start mends it. */
const MENDED: ReadonlySet<string> = new Set(['restored', 'recopied']);

export async function killLoop(options: {
  kills: number;
  seed: number;
  engine: Engine;
  plant?: PlantName;
  /** How long it writes before it is killed, at most. */
  mostMs?: number;
  /** Ends with the first loss that is seen: so that a planted one is looked for long and found soon. */
  untilLost?: boolean;
}): Promise<Kills> {
  const { kills, engine, plant = 'none', mostMs = 850 } = options;
  const random = seeded(options.seed);
  const url = await pageUrl(plant);
  const profile = newProfile();
  const acked = new Set<string>();
  const lost = new Set<string>();
  const uncopied = new Set<string>();
  const told: string[] = [];
  for (let round = 0; round <= kills; round++) {
    const context = await launch(profile, engine);
    await context.exposeFunction('tellAcked', (ids: readonly string[]) => {
      for (const id of ids) acked.add(id);
    });
    const page = await tab(context, url);
    const start = await page.evaluate(() => window.store.lookThrough());
    if (start.code !== 'ready') told.push(start.code);
    else
      told.push(
        ...start.told.filter(({ code }) => !MENDED.has(code)).map(({ code, count }) => `${code} ${count}`),
      );
    const { stored, copied } = await page.evaluate(() => window.store.held());
    const inStore = new Set(stored);
    const inCopy = new Set(copied);
    for (const id of acked) {
      if (!inStore.has(id)) lost.add(id);
      if (!inCopy.has(id)) uncopied.add(id);
    }
    if (round === kills || (options.untilLost && lost.size > 0)) {
      await context.close();
      break;
    } else {
      page
        .evaluate((pad) => window.store.writeOn(window.tellAcked, pad), Math.floor(random() * 2000))
        .catch(() => undefined);
      await new Promise((resolve) => setTimeout(resolve, 150 + random() * (mostMs - 150)));
      await kill(profile);
      await context.close().catch(() => undefined);
    }
  }
  dropProfile(profile);
  return { kills, acked: acked.size, lost: lost.size, uncopied: uncopied.size, told };
}
