/** How hard the air draws on the skin when a piece comes into the chamber: told from its first days on the scale. */

/** A weighing since the piece was hung, bags and other rests left out: days of drying, and loss since hanging. */
export type EarlyWeighIn = { readonly days: number; readonly lossPct: number };

/** The rate at which it lost in its first hours, in % of green weight a day, with its doubt (one sd). */
export type SkinRate = {
  readonly pctPerDay: number;
  readonly sdPctPerDay: number;
  /** True where the curve bends over as under a closed skin: its power of time is below 0.7, as far as one sd. */
  readonly closes: boolean;
};

/** After these days the core, not the air, decides what leaves: a later weighing says little of the skin. */
export const EARLY_DAYS = 4;

/** The rate is told for this time after hanging, about two and a half hours: before a rim can have slowed it. */
const AT_DAYS = 0.1;
/** Error of a difference of two weighings in points of loss: a wet skin, a drip, a coarse scale. */
const WEIGHED_SD_PCT = 0.4;
/** Loss since hanging grows with this power of time: 0.5 where the skin has closed, 1 where the air alone holds it back. */
const POWER = { mean: 0.8, sd: 0.25, low: 0.35, high: 1.25, steps: 19 };

/** Sound pieces lose with a power between this and 1 of time (computed, as `mostPctPerDay`). */
const CLOSING_POWER = 0.7;

/**
 * How fast a piece lost water when it was hung, from all its weighings of the first days. `null` without one.
 * The wrong tool for a date: it looks at the skin, not at the core.
 *
 * loss = a · days^p; p ~ N(0.8, 0.25) on a grid, `a` summed out in closed form; rate = a p t^(p - 1) at t = 0.1 day. A
 * curve that bends over at once was steeper at its start: so a closing rim shows.
 * Units: days, % of green weight.
 * Source: diffusion from a skin held at the air's humidity grows with the root of time, from a skin that gives off at a
 * steady rate with time itself (Crank 1975, ch. 3); between them, a power (derived). Bayes' rule.
 * @throws RangeError if a weighing is not a number or lies before hanging.
 * @example skinRate([{ days: 9, lossPct: 12 }]) // => null
 */
export function skinRate(weighIns: readonly EarlyWeighIn[]): SkinRate | null {
  for (const { days, lossPct } of weighIns)
    if (!(days >= 0 && Number.isFinite(lossPct)))
      throw new RangeError(`skinRate: weighIns require days from hanging on, got ${days}, ${lossPct}`);
  const early = weighIns.filter(({ days }) => days > 0 && days <= EARLY_DAYS);
  if (early.length === 0) return null;
  const beliefs = Array.from({ length: POWER.steps }, (_, step) => {
    const power = POWER.low + (step / (POWER.steps - 1)) * (POWER.high - POWER.low);
    const grown = early.map(({ days }) => days ** power);
    const squares = grown.reduce((sum, x) => sum + x * x, 0);
    const factor = early.reduce((sum, one, i) => sum + (grown[i] ?? 0) * one.lossPct, 0) / squares;
    const left = early.reduce((sum, one, i) => sum + (one.lossPct - factor * (grown[i] ?? 0)) ** 2, 0);
    const slope = power * AT_DAYS ** (power - 1);
    return {
      power,
      rate: factor * slope,
      variance: (WEIGHED_SD_PCT * slope) ** 2 / squares,
      lnShare:
        -left / (2 * WEIGHED_SD_PCT ** 2) -
        ((power - POWER.mean) / POWER.sd) ** 2 / 2 -
        Math.log(squares) / 2,
    };
  });
  const best = Math.max(...beliefs.map(({ lnShare }) => lnShare));
  const shares = beliefs.map(({ lnShare }) => Math.exp(lnShare - best));
  const total = shares.reduce((sum, share) => sum + share, 0);
  const mean = (of: (belief: (typeof beliefs)[number]) => number) =>
    beliefs.reduce((sum, belief, i) => sum + ((shares[i] ?? 0) / total) * of(belief), 0);
  const pctPerDay = mean(({ rate }) => rate);
  const variance = mean((belief) => belief.variance + belief.rate ** 2) - pctPerDay ** 2;
  const power = mean((belief) => belief.power);
  const powerSd = Math.sqrt(Math.max(0, mean((belief) => belief.power ** 2) - power ** 2));
  return {
    pctPerDay,
    sdPctPerDay: Math.sqrt(Math.max(0, variance)),
    closes: power + powerSd < CLOSING_POWER,
  };
}

/** Of a 50 mm piece: faster, and the skin gives off more than the core of most mixes sends after it. */
const MOST_AT_50_MM_PCT_PER_DAY = 4.8;

/**
 * The fastest that a piece of one diameter should lose in its first hours in the chamber.
 *
 * 4.8 % a day · (50 mm / d)^1.3: between the same water through each square centimetre of skin (power 1) and the
 * same share of the time that the core needs (power 1.65).
 * Units: mm; result % of green weight a day.
 * Valid: 36 to 90 mm.
 * Source: simulated pieces with a rim never above 0.05 in water activity against those above 0.10 (computed, seeds from
 * 10,001 on).
 * @throws RangeError unless the diameter is above zero.
 * @example mostPctPerDay({ diameterMm: 50 }) // => 4.8
 */
export function mostPctPerDay({ diameterMm }: { diameterMm: number }): number {
  if (!(diameterMm > 0 && diameterMm < Infinity))
    throw new RangeError(`mostPctPerDay: diameterMm requires a length above 0, got ${diameterMm}`);
  return MOST_AT_50_MM_PCT_PER_DAY * (50 / diameterMm) ** 1.3;
}
