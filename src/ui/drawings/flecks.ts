import { chanceFrom } from './chance.ts';
import { xy } from './round.ts';

export type Fleck = { x: number; y: number; radius: number };

/**
 * Flecks of fat inside a box, spread evenly: each takes the place farthest from those before it, out of a few tried.
 * The same seed gives the same flecks.
 */
export function scatterFlecks({
  seed,
  count,
  width,
  height,
  radius,
}: {
  seed: number;
  count: number;
  width: number;
  height: number;
  radius: number;
}): Fleck[] {
  const chance = chanceFrom(seed);
  const flecks: Fleck[] = [];
  for (let made = 0; made < count; made++) {
    let best: Fleck | null = null;
    let bestGap = -1;
    for (let tried = 0; tried < 6; tried++) {
      const spot = {
        x: chance() * width,
        y: chance() * height,
        radius: radius * (0.4 + 0.9 * chance() ** 1.6),
      };
      const gap = Math.min(
        ...flecks.map((each) => Math.hypot(each.x - spot.x, each.y - spot.y)),
        width + height,
      );
      if (gap > bestGap) {
        best = spot;
        bestGap = gap;
      }
    }
    if (best) flecks.push(best);
  }
  return flecks;
}

/** All flecks as one path: four rounded corners each, no two alike. */
export function flecksPath(flecks: readonly Fleck[], seed: number): string {
  const chance = chanceFrom(seed + 1);
  return flecks
    .map(({ x, y, radius }) => {
      const turn = chance() * Math.PI;
      const corners = [0, 1, 2, 3].map((corner) => {
        const angle = turn + (corner * Math.PI) / 2;
        const reach = radius * (corner % 2 === 0 ? 1.25 : 0.8) * (0.8 + 0.4 * chance());
        return { x: x + reach * Math.cos(angle), y: y + reach * Math.sin(angle) };
      });
      const [a, b, c, d] = corners as [Spot, Spot, Spot, Spot];
      const between = (one: Spot, other: Spot) => xy((one.x + other.x) / 2, (one.y + other.y) / 2);
      return `M${between(d, a)}Q${xy(a.x, a.y)} ${between(a, b)}T${between(b, c)}T${between(c, d)}T${between(d, a)}Z`;
    })
    .join('');
}

type Spot = { x: number; y: number };
