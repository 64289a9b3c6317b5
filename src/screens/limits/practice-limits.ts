import { ICE_LIMIT, WET_SALT_LIMIT } from '#core/ferment/instrument-check.ts';
import { METER_LIMITS } from '#core/ferment/meter-check.ts';
import { type GateStage, TEMPERATURE_GATES } from '#core/ferment/temperature-gate.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { type LimitGroup, limitView } from './limit-text.ts';

/** What no rule set says and the app goes by all the same: instruments, and how cold meat is kept at the bench. */
export function practiceLimits(words: Words, place: Place): readonly LimitGroup[] {
  const say = words.limits.practice;
  const stages = Object.keys(TEMPERATURE_GATES) as GateStage[];
  return [
    {
      title: say.instruments,
      note: null,
      limits: [
        ...(['offsetLow', 'offsetHigh', 'slopeLow', 'slopeHigh', 'error'] as const).map((name) =>
          limitView({ title: say.meter[name], limit: METER_LIMITS[name] }, words, place),
        ),
        limitView({ title: say.ice, limit: ICE_LIMIT }, words, place),
        limitView({ title: say.wetSalt, limit: WET_SALT_LIMIT }, words, place),
      ],
    },
    {
      title: say.cold,
      note: say.coldNote,
      limits: stages.flatMap((stage) => [
        limitView({ title: say.stage[stage], of: say.go, limit: TEMPERATURE_GATES[stage].go }, words, place),
        limitView(
          { title: say.stage[stage], of: say.stop, limit: TEMPERATURE_GATES[stage].stop },
          words,
          place,
        ),
      ]),
    },
  ];
}
