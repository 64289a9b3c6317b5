import { asSodiumMgPerKg, type CureSalt, ionMgPerKg, ionUpperMgPerKg, saltPctOfCure } from './cure.ts';
import { type CureLabel, isCure, isInMix, isMeat, type Role } from './formula.ts';

/** Everything that follows from grams on the bench. Planned, rounded and actually weighed grams all go through here. */

/** One line as grams. `massG` null: not weighed yet. */
export type LineGrams = {
  readonly role: Role;
  readonly massG: number | null;
  readonly cure?: CureLabel | undefined;
};

/** Nitrite or nitrate. `salts` are all salts it came as; `mgPerKg` counts each by its own weight. */
export type AgentFigures = {
  readonly massG: number;
  readonly mgPerKgMeat: number;
  readonly mgPerKgMix: number;
  readonly sodiumMgPerKgMeat: number;
  readonly ionMgPerKgMeat: number;
  /** The larger of published and molar factor: what a maximum is held against at its upper end. */
  readonly ionUpperMgPerKgMeat: number;
  readonly ionMgPerKgMix: number;
};

export type Figures = {
  readonly meatG: number;
  readonly mixG: number;
  readonly fatPctOfMeat: number;
  readonly addedSaltG: number;
  readonly cureSaltG: number;
  readonly saltG: number;
  readonly saltPctOfMeat: number;
  readonly saltPctOfMix: number;
  /** Null while a cure has no label or has not been weighed: then the amount is not known. */
  readonly nitrite: AgentFigures | null;
  readonly nitrate: AgentFigures | null;
  /** What is already known to be in, at the least. Never to be shown as the amount; it can pass a limit on its own. */
  readonly knownNitrite: AgentFigures;
  readonly knownNitrate: AgentFigures;
  /** `cure-label`, `cure-grams`, `salt-grams`, `line-grams`: what the figures above had to go without. */
  readonly missing: readonly string[];
};

type Agent = { readonly salt: CureSalt; readonly massG: number };

function agentFigures(agents: readonly Agent[], meatG: number, mixG: number): AgentFigures {
  const sum = (perAgent: (agent: Agent) => number) => agents.reduce((total, one) => total + perAgent(one), 0);
  const perMeat = ({ massG }: Agent) => (massG * 1e6) / meatG;
  const perMix = ({ massG }: Agent) => (massG * 1e6) / mixG;
  return {
    massG: sum(({ massG }) => massG),
    mgPerKgMeat: sum(perMeat),
    mgPerKgMix: sum(perMix),
    sodiumMgPerKgMeat: sum((one) => asSodiumMgPerKg({ mgPerKg: perMeat(one), salt: one.salt })),
    ionMgPerKgMeat: sum((one) => ionMgPerKg({ mgPerKg: perMeat(one), salt: one.salt })),
    ionUpperMgPerKgMeat: sum((one) => ionUpperMgPerKg({ mgPerKg: perMeat(one), salt: one.salt })),
    ionMgPerKgMix: sum((one) => ionMgPerKg({ mgPerKg: perMix(one), salt: one.salt })),
  };
}

/**
 * Salt, nitrite, nitrate and total mix from grams. The salt inside a cure is salt.
 *
 * Wrong tool: for the finished slice; see `composition.ts`. What is not weighed counts as nothing and is named in
 * `missing`, so that no figure stands as complete that is not.
 *
 * Formula: agent = cure x share; mg/kg = agent x 1 000 000 / base; total salt = salt + cure - nitrite - nitrate.
 * Units: g, percent, mg/kg on green meat and on the whole mix.
 * Source: USDA FSIS, Directive 7620.3 (1995), chapter 3, basis and comminuted formula (read-second-hand).
 * @throws RangeError if there is no meat.
 * @example figuresFromGrams({ leanG: 750, fatG: 250, lines: [{ role: 'salt', massG: 28 }] }).saltPctOfMeat // => 2.8
 */
export function figuresFromGrams({
  leanG,
  fatG,
  lines,
}: {
  leanG: number;
  fatG: number;
  lines: readonly LineGrams[];
}): Figures {
  const meatG = leanG + fatG;
  if (!(leanG >= 0 && fatG >= 0 && meatG > 0))
    throw new RangeError(`figuresFromGrams: leanG and fatG require meat above 0 g, got ${leanG} and ${fatG}`);
  const dry = lines.filter(({ role }) => isInMix(role) && !isMeat(role));
  const cures = dry.filter(isCure);
  const gramsOf = (some: readonly LineGrams[]) => some.reduce((total, { massG }) => total + (massG ?? 0), 0);
  const mixG = meatG + gramsOf(dry);
  const addedSaltG = gramsOf(dry.filter((line) => line.role === 'salt' && !isCure(line)));
  const cureSaltG = cures.reduce(
    (total, { cure, massG }) => total + (cure ? ((massG ?? 0) * saltPctOfCure(cure)) / 100 : 0),
    0,
  );
  const saltG = addedSaltG + cureSaltG;
  const missing = new Set<string>();
  for (const line of dry) {
    if (isCure(line) && !line.cure) missing.add('cure-label');
    if (line.massG === null)
      missing.add(isCure(line) ? 'cure-grams' : line.role === 'salt' ? 'salt-grams' : 'line-grams');
  }
  const agents = (of: (label: CureLabel) => Omit<Agent, 'massG'> & { sharePct: number }): AgentFigures => {
    const known: Agent[] = [];
    for (const { cure, massG } of cures) {
      if (!cure || massG === null) continue;
      const { salt, sharePct } = of(cure);
      known.push({ salt, massG: (massG * sharePct) / 100 });
    }
    return agentFigures(known, meatG, mixG);
  };
  const complete = cures.every(({ cure, massG }) => cure && massG !== null);
  const knownNitrite = agents(({ nitriteSalt, nitritePct }) => ({ salt: nitriteSalt, sharePct: nitritePct }));
  const knownNitrate = agents(({ nitrateSalt, nitratePct }) => ({ salt: nitrateSalt, sharePct: nitratePct }));
  return {
    meatG,
    mixG,
    fatPctOfMeat: (100 * fatG) / meatG,
    addedSaltG,
    cureSaltG,
    saltG,
    saltPctOfMeat: (100 * saltG) / meatG,
    saltPctOfMix: (100 * saltG) / mixG,
    nitrite: complete ? knownNitrite : null,
    nitrate: complete ? knownNitrate : null,
    knownNitrite,
    knownNitrate,
    missing: [...missing],
  };
}
