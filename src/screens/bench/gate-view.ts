import {
  CHILL_MINUTES,
  type GateAnswer,
  type GateStage,
  temperatureGate,
} from '#core/ferment/temperature-gate.ts';
import type { BenchStep } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import type { VerdictShape } from '#ui/VerdictMark.tsx';
import type { Words } from '#words/en.ts';
import { joined, temperature } from '#words/format.ts';

export type GateField = 'leanC' | 'fatC' | 'tempC';
type Gates = Readonly<Partial<Record<GateField, GateStage>>>;

/** What is measured at each step, and the gate that it goes through. */
export const STEP_GATES: Readonly<Record<BenchStep, Gates>> = {
  cleaned: {},
  ground: { leanC: 'lean-before-grinding', fatC: 'fat-before-grinding', tempC: 'after-grinding' },
  mixed: { tempC: 'after-mixing' },
  stuffed: { tempC: 'after-mixing' },
};

const SHAPES: Readonly<Record<GateAnswer['light'], VerdictShape>> = {
  go: 'within-limit',
  mind: 'pending',
  stop: 'deviation',
};

export type GateView = {
  readonly field: GateField;
  readonly light: GateAnswer['light'];
  readonly shape: VerdictShape;
  readonly text: string;
};

/** A light for each temperature that was typed. Common practice: the maker may go on, with a reason on the record. */
export function gateViews({
  step,
  temps,
  place,
  words,
}: {
  step: BenchStep;
  temps: Readonly<Partial<Record<GateField, number>>>;
  place: Place;
  words: Words;
}): GateView[] {
  const say = words.bench.gate;
  const shown = (tempC: number) => joined(temperature(tempC, place));
  return (Object.entries(STEP_GATES[step]) as [GateField, GateStage][]).flatMap(([field, stage]) => {
    const tempC = temps[field];
    if (tempC === undefined) return [];
    const { light, limit } = temperatureGate({ stage, tempC });
    const text =
      light === 'go'
        ? say.go(shown(tempC))
        : light === 'mind'
          ? say.mind(shown(tempC), shown(limit.value))
          : say.stop(shown(tempC), shown(limit.value), CHILL_MINUTES);
    return [{ field, light, shape: SHAPES[light], text }];
  });
}
