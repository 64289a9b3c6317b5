import { saltPctOfSlice } from '#core/formula/slice.ts';
import type { WorkingText } from '#ui/Working.tsx';
import { decimal } from '#words/format.ts';
import type { FormulaPlan } from './formula-plan.ts';
import type { ViewGiven } from './formula-view.ts';
import { nitritePlaces, nitriteWorking, saltWorking, sliceWorking } from './formula-workings.ts';

export type FigureView = {
  readonly label: string;
  readonly value: string;
  readonly unit: string;
  readonly about: boolean;
  readonly note: string;
  readonly working: WorkingText;
};

/** Total salt, what it becomes in the slice, and nitrite: few and large. */
export function figureViews(given: ViewGiven, plan: FormulaPlan): FigureView[] {
  const { formula, place, words } = given;
  const { figures } = plan.out;
  const say = words.formulas.figures;
  const cureSaltPct = (100 * figures.cureSaltG) / figures.meatG;
  const known = !figures.missing.includes('cure-label');
  const salt: FigureView = {
    label: known ? say.totalSalt : say.leastSalt,
    value: decimal(figures.saltPctOfMeat, 2, place),
    unit: '%',
    about: false,
    note: !known
      ? say.saltUnknown
      : figures.cureSaltG > 0
        ? say.saltNote(`${decimal(cureSaltPct, 2, place)}\u00a0%`)
        : say.ofMeat,
    working: saltWorking(plan, given),
  };
  const lossPct = formula.targetLossPct;
  const slice = (): FigureView[] =>
    lossPct === undefined || !known
      ? []
      : [
          {
            label: say.slice,
            value: decimal(saltPctOfSlice({ saltPctOfMix: figures.saltPctOfMix, lossPct }), 1, place),
            unit: '%',
            about: true,
            note: say.sliceNote(words.workings.exactly(lossPct, place)),
            working: sliceWorking(plan, lossPct, given),
          },
        ];
  const { nitrite } = figures;
  const agent = (): FigureView[] =>
    nitrite === null || !(nitrite.massG > 0)
      ? []
      : [
          {
            label: say.nitrite,
            value: decimal(nitrite.mgPerKgMeat, nitritePlaces(plan), place, 'up'),
            unit: '',
            about: false,
            note: say.nitriteNote(decimal(nitrite.ionUpperMgPerKgMeat, 1, place, 'up')),
            working: nitriteWorking(plan, given),
          },
        ];
  return [salt, ...slice(), ...agent()];
}
