import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import { freezingTable } from '#core/rules/freezing.ts';
import type { Limit, RuleSetId, Source } from '#core/rules/rule.ts';
import { type Measure, RULE_SETS } from '#core/rules/rule-sets.ts';
import { CFR_172_170 } from '#core/rules/sources.ts';
import type { Place } from '#record/place.ts';
import type { HazardId } from '#words/en/hazards.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';
import {
  ARS_GROWTH,
  BRITOVI,
  CFIA_DEGREE_HOURS,
  CFIA_SAMPLING,
  CFIA_TRICHINELLA,
  CFR_318_10,
  EU_2073_2005,
  FDA_GROWTH,
  FSANZ_1_6_1,
  MARCY_1985,
  MOULD_SURVEY,
  NITRATE_REDUCTASE,
  NY_318_10,
  TEXTBOOK_MOULD,
  VET_MANUAL,
} from './hazard-sources.ts';

export type FactView = {
  readonly text: string;
  readonly sources: readonly { readonly text: string; readonly standing: string }[];
};
export type HazardView = {
  readonly id: HazardId;
  readonly title: string;
  readonly sentence: Said;
  readonly text: readonly string[];
  readonly facts: readonly FactView[];
};

type Fact = readonly [text: string, ...sources: Source[]];

/** The first limit of a rule set on one measure of ground meat, or of whole muscle. */
function limitOf(
  ruleSet: RuleSetId,
  {
    measure,
    relation,
    kind = 'comminuted',
  }: { measure: Measure; relation: Limit['relation']; kind?: 'comminuted' | 'whole-muscle' },
): Limit {
  const found = RULE_SETS[ruleSet].formula.find(
    (rule) => rule.measure === measure && rule.limit.relation === relation && rule.kinds.includes(kind),
  );
  if (!found) throw new RangeError(`limitOf: ${ruleSet} requires a limit on ${measure}`);
  return found.limit;
}

function factsOf(words: Words, place: Place): Readonly<Partial<Record<HazardId, readonly Fact[]>>> {
  const say = words.hazards.facts;
  const number = (value: number, places = 0) => decimal(value, places, place);
  const aw = (value: number) => words.workings.exactly(value, place);
  const ph = (value: number) => decimal(value, 1, place);
  const temp = (tempC: number, places = 1) => joined(temperature(tempC, place, places));
  const pct = (value: number, places: number) => joined({ value: decimal(value, places, place), unit: '%' });
  const limited = (limit: Limit) =>
    joined({ value: words.workings.exactly(limit.value, place), unit: words.limits.unit(limit.unit) });

  const usNitrite = limitOf('US', { measure: 'nitrite', relation: '<=' });
  const usWhole = limitOf('US', { measure: 'nitrite', relation: '<=', kind: 'whole-muscle' });
  const usFloor = limitOf('US', { measure: 'nitrite', relation: '>=' });
  const caMost = limitOf('CA', { measure: 'nitrite-and-nitrate', relation: '<=' });
  const caLeast = limitOf('CA', { measure: 'nitrite-and-nitrate', relation: '>=' });
  const caSalt = limitOf('CA', { measure: 'salt-of-mix', relation: '>=' });
  const euNitrite = limitOf('EU', { measure: 'nitrite-ion', relation: '<=' });
  const [leftNitrite, leftNitrate] = RULE_SETS.US.laboratory;
  const { base } = DEGREE_HOUR_RULES.CA;
  const freezing = freezingTable({ ruleSet: 'US', method: 'room', thicknessMm: 100 });

  return {
    botulism: [
      [say.botulinumGrowth({ aw: aw(0.93), ph: ph(4.7) }), FDA_GROWTH],
      [
        say.cureFloor({ mgPerKg: limited(caLeast), salt: pct(caSalt.value, 1) }),
        caLeast.source,
        caSalt.source,
      ],
      [say.nitriteFloorUs({ mgPerKg: limited(usFloor) }), usFloor.source],
    ],
    nitrite: [
      [say.nitriteMostUs({ ground: limited(usNitrite), whole: limited(usWhole) }), usNitrite.source],
      [say.nitriteMostCa({ mgPerKg: limited(caMost) }), caMost.source],
      [say.nitriteMostEu({ mgPerKg: limited(euNitrite) }), euNitrite.source],
      ...(leftNitrite && leftNitrate
        ? [
            [
              say.nitriteHome({ nitrite: limited(leftNitrite.limit), nitrate: limited(leftNitrate.limit) }),
              CFR_172_170,
            ] as const,
          ]
        : []),
    ],
    staphylococcus: [
      [say.staphFrom({ temp: temp(base.value) }), base.source],
      [say.staphRoom(), CFIA_DEGREE_HOURS],
      ...(['US', 'CA'] as const).map((id): Fact => {
        const { classes } = DEGREE_HOUR_RULES[id];
        const said = {
          system: words.verdicts.ruleSet[id],
          limits: classes.map(({ limit }) => number(limit.value)),
          unit: words.limits.unit(classes[0]?.limit.unit ?? ''),
        };
        return [say.staphLimits(said), ...classes.map(({ limit }) => limit.source)];
      }),
      [say.staphAw({ low: aw(0.83), high: aw(0.86) }), ARS_GROWTH, FDA_GROWTH],
    ],
    coliSalmonella: [
      [
        say.coliGrowth({ coliAw: aw(0.935), coliPh: ph(4.4), salmonellaAw: aw(0.94), salmonellaPh: ph(3.8) }),
        FDA_GROWTH,
        ARS_GROWTH,
      ],
      [
        say.coliLimits({
          samples: number(5),
          coli: ph(9.2),
          sampleG: joined({ value: number(25), unit: 'g' }),
        }),
        FSANZ_1_6_1,
      ],
      [say.coliSampling({ batter: number(15), finished: number(30) }), CFIA_SAMPLING],
    ],
    listeria: [
      [say.listeriaGrowth({ aw: aw(0.92), ph: ph(4.4) }), FDA_GROWTH, ARS_GROWTH],
      [say.listeriaEu({ ph: ph(4.4), aw: aw(0.92), ph2: ph(5), aw2: aw(0.94) }), EU_2073_2005],
      [say.listeriaLimit({ cfu: number(100) }), EU_2073_2005],
    ],
    trichinella: [
      ...(freezing
        ? [
            [
              say.trichinellaFreezing({
                cm: joined({ value: ph(freezing.toMm / 10), unit: 'cm' }),
                times: freezing.rows.map(({ atC, hours }) => ({ days: number(hours / 24), temp: temp(atC) })),
              }),
              freezing.source,
            ] as const,
          ]
        : []),
      [say.trichinellaReserved(), CFR_318_10],
      [
        say.trichinellaCuring({
          salt: pct(3.33, 2),
          mm: joined({ value: number(89), unit: 'mm' }),
          temp: temp(7.2),
          days: number(20),
          total: number(25),
        }),
        NY_318_10,
      ],
      [say.trichinellaOnly(), CFIA_TRICHINELLA],
    ],
    moulds: [
      [say.mouldJudge(), TEXTBOOK_MOULD],
      [say.mouldSummer({ from: number(80), to: pct(90, 0) }), MOULD_SURVEY],
    ],
    salt: [
      [say.saltLeast({ salt: pct(caSalt.value, 1) }), caSalt.source],
      [say.saltSlows(), MARCY_1985],
    ],
    noCure: [[say.nitrateStops({ ph: ph(5.2) }), NITRATE_REDUCTASE]],
    game: [
      [say.gameFreezing(), VET_MANUAL],
      [say.gameBoar({ weeks: number(3), temp: temp(-20) }), BRITOVI],
    ],
  };
}

/** The hazards, each with what its sources say, numbers written as this maker writes them. */
export function hazardsView(words: Words, place: Place): readonly HazardView[] {
  const facts = factsOf(words, place);
  const { sections } = words.hazards;
  return (Object.keys(sections) as HazardId[]).map((id) => ({
    id,
    ...sections[id],
    facts: (facts[id] ?? []).map(([text, ...sources]) => ({
      text,
      sources: sources.map(words.workings.source),
    })),
  }));
}
