import type { Formula } from '#core/formula/formula.ts';
import { type LabelItem, labelItems, per100G } from '#core/formula/label.ts';
import { allergensIn, allergensToAsk } from '#core/rules/allergens.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import type { FormulaPlan } from './formula-plan.ts';

export type LabelView = {
  readonly ingredients: readonly string[];
  readonly meatFor: { readonly value: string; readonly note: string } | null;
  readonly allergens: readonly string[];
  readonly notes: readonly string[];
};

/** A draft of the label from the planned grams. */
export function labelView(formula: Formula, plan: FormulaPlan, place: Place, words: Words): LabelView {
  const say = words.formulaSheets.label;
  const { leanG, fatG, lines, figures } = plan.out;
  const items = labelItems({ formula, leanG, fatG, gramsByLine: lines.map(({ roundedG }) => roundedG) });
  const lossPct = formula.targetLossPct;
  const meatPct = (100 * figures.meatG) / figures.mixG;
  const found = allergenTexts(formula, plan, place, words);
  return {
    ingredients: items.map((item) =>
      item.kind === 'agent'
        ? itemName(item, words)
        : say.item(itemName(item, words), decimal(item.pctOfMix, item.pctOfMix < 1 ? 2 : 1, place)),
    ),
    meatFor:
      lossPct === undefined
        ? null
        : {
            value: `~${decimal(per100G({ pctOfMix: meatPct, lossPct }), 0, place)}\u00a0g`,
            note: say.meatNote(words.workings.exactly(lossPct, place)),
          },
    allergens: found.named,
    notes: [...found.notes, ...(lossPct === undefined ? [say.noLoss] : []), say.note],
  };
}

function itemName({ name, role, agent }: LabelItem, words: Words): string {
  const say = words.formulaSheets.label;
  if (agent !== null) return say.agent[agent];
  if (name !== '') return name;
  return role === 'fat' ? say.fatName : role === 'salt' ? say.saltName : say.leanName;
}

function allergenTexts(
  formula: Formula,
  { out }: FormulaPlan,
  place: Place,
  words: Words,
): { named: string[]; notes: string[] } {
  const say = words.formulaSheets.label;
  const called = (code: string) => say.allergen[code] ?? code;
  const asks = formula.lines.flatMap(({ name, allergens = [] }) => {
    const open = allergensToAsk(name).filter((each) => !allergens.includes(each));
    return open.length > 0 ? [say.ask(name, open.map(called).join(', '))] : [];
  });
  if (place.ruleSet === null) return { named: [], notes: [say.noRuleSet, ...asks] };
  const { entries, sulphites } = allergensIn({
    lines: formula.lines.map(({ id, allergens = [], sulphiteMgPerKg = null }, at) => ({
      id,
      massG: out.lines[at]?.roundedG ?? 0,
      allergens,
      sulphiteMgPerKg,
    })),
    finishedG: out.figures.mixG * (1 - (formula.targetLossPct ?? 0) / 100),
    ruleSet: place.ruleSet,
  });
  const nameOf = (id: string) => formula.lines.find((line) => line.id === id)?.name ?? id;
  const most = sulphites.mostMgPerKg === null ? '' : decimal(sulphites.mostMgPerKg, 1, place, 'up');
  const told = say.sulphites[sulphites.state];
  return {
    named: entries.map(({ entry, lineIds }) => say.from(called(entry), lineIds.map(nameOf).join(', '))),
    notes: [
      ...(entries.length === 0 ? [say.noAllergens] : []),
      typeof told === 'string' ? told : told(most),
      ...asks,
    ].filter(Boolean),
  };
}
