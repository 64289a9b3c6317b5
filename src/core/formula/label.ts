import type { CureSalt } from './cure.ts';
import { type Formula, isInMix, isMeat, type MassesG, type Role } from './formula.ts';

/** What a label says of a batch: its ingredients by weight at mixing, and how much meat went into 100 g. */

export type LabelItem = {
  /** `line`: an ingredient. `agent`: nitrite or nitrate out of a cure, whose salt was counted with the salt. */
  readonly kind: 'line' | 'agent';
  readonly lineIds: readonly string[];
  /** The formula's own name; empty for meat that the formula does not name, and for an agent. */
  readonly name: string;
  readonly role: Role;
  readonly agent: CureSalt | null;
  readonly massG: number;
  readonly pctOfMix: number;
};

function unsorted(formula: Formula, leanG: number, fatG: number, gramsByLine: MassesG): LabelItem[] {
  const items: LabelItem[] = [];
  const item = (more: Omit<LabelItem, 'pctOfMix'>) => items.push({ ...more, pctOfMix: 0 });
  for (const [role, massG] of [
    ['lean', leanG],
    ['fat', fatG],
  ] as const)
    if (massG > 0 && !formula.lines.some((line) => line.role === role))
      item({ kind: 'line', lineIds: [], name: '', role, agent: null, massG });
  let cureSaltG = 0;
  formula.lines.forEach(({ id, name, role, cure }, at) => {
    const massG = gramsByLine[at] ?? 0;
    if (!isInMix(role) || massG === 0) return;
    const lineIds = [id];
    if (!cure) {
      item({ kind: 'line', lineIds, name, role, agent: null, massG });
      return;
    }
    const agents = [
      [cure.nitriteSalt, (massG * cure.nitritePct) / 100],
      [cure.nitrateSalt, (massG * cure.nitratePct) / 100],
    ] as const;
    for (const [agent, agentG] of agents)
      if (agentG > 0) item({ kind: 'agent', lineIds, name: '', role, agent, massG: agentG });
    cureSaltG += massG - agents[0][1] - agents[1][1];
  });
  if (cureSaltG === 0) return items;
  const salt = items.find(({ role, agent }) => role === 'salt' && agent === null);
  if (!salt) item({ kind: 'line', lineIds: [], name: '', role: 'salt', agent: null, massG: cureSaltG });
  return items.map((one) => (one === salt ? { ...one, massG: one.massG + cureSaltG } : one));
}

/**
 * Ingredients in descending order of weight at mixing. The salt inside a cure counts with the salt, its nitrite and
 * nitrate stand by themselves, the same agent from two bags once. Mould on the casing is not mixed in and not listed.
 *
 * Wrong tool: as a finished label; compound ingredients, functions and claims follow local law.
 *
 * Units: g, percent of the mix.
 * Source: Regulation (EU) No 1169/2011, order by weight at the time of use (memory-high).
 * @throws RangeError if there is no meat or the grams do not match the lines.
 * @example labelItems({ formula: { name: '', kind: 'comminuted', species: [], fatPctOfMeat: 25, lines: [{ id: 's', name: 'salt', role: 'salt', amount: { basis: 'fixed', amountG: 25 } }] }, leanG: 725, fatG: 250, gramsByLine: [25] }).map(({ role, pctOfMix }) => [role, pctOfMix]) // => [['lean', 72.5], ['fat', 25], ['salt', 2.5]]
 */
export function labelItems({
  formula,
  leanG,
  fatG,
  gramsByLine,
}: {
  formula: Formula;
  leanG: number;
  fatG: number;
  gramsByLine: MassesG;
}): readonly LabelItem[] {
  const meatG = leanG + fatG;
  if (!(meatG > 0) || gramsByLine.length !== formula.lines.length)
    throw new RangeError(`labelItems: gramsByLine requires meat and one mass a line, got ${meatG} g of meat`);
  const mixG = formula.lines.reduce(
    (sum, { role }, at) => (isInMix(role) && !isMeat(role) ? sum + (gramsByLine[at] ?? 0) : sum),
    meatG,
  );
  const merged: LabelItem[] = [];
  for (const one of unsorted(formula, leanG, fatG, gramsByLine)) {
    const at = merged.findIndex(({ agent }) => agent !== null && agent === one.agent);
    const same = merged[at];
    if (same)
      merged[at] = { ...same, lineIds: [...same.lineIds, ...one.lineIds], massG: same.massG + one.massG };
    else merged.push(one);
  }
  return merged
    .map((one) => ({ ...one, pctOfMix: (100 * one.massG) / mixG }))
    .toSorted((one, other) => other.massG - one.massG);
}

/**
 * An ingredient's weight at mixing for 100 g of the finished product: "made with 159 g of meat per 100 g".
 *
 * Formula: share of mix / (1 - loss). Units: g per 100 g; the same for a named spice.
 * Source: mass balance (derived).
 * @throws RangeError if the loss is not below 100 %.
 * @example per100G({ pctOfMix: 95.7, lossPct: 40 }) // => 159.5
 */
export function per100G({ pctOfMix, lossPct }: { pctOfMix: number; lossPct: number }): number {
  if (!(lossPct >= 0 && lossPct < 100))
    throw new RangeError(`per100G: lossPct requires 0 to below 100 %, got ${lossPct}`);
  return pctOfMix / (1 - lossPct / 100);
}
