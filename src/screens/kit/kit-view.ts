import type { Exposure } from '#record/exposure.ts';
import type { Place } from '#record/place.ts';
import type { Kit } from '#store/live.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';

export type KitView = {
  readonly sentence: Said;
  readonly rows: readonly { readonly href: string; readonly title: string; readonly note: string }[];
};

/** What stands in the workshop, and the way to each part of it. */
export function kitView({
  place,
  kit,
  exposure,
  nowMs,
  zone,
  words,
}: {
  place: Place;
  kit: Kit;
  exposure: Exposure;
  nowMs: number;
  zone: string;
  words: Words;
}): KitView {
  const say = words.kit;
  const ruleSet = place.ruleSet && words.verdicts.ruleSet[place.ruleSet];
  const degrees = place.temperature === 'C' ? '°C' : '°F';
  const last = [...kit.lots].sort((a, b) => b.received.atMs - a.received.atMs)[0]?.received;
  const instruments = [...kit.scales, ...kit.meters].map(({ name }) => name);
  const { rows } = say;
  return {
    sentence: place.chosen
      ? say.stands({
          mass: place.mass,
          degrees,
          ruleSet,
          scales: kit.scales.length,
          meters: kit.meters.length,
          lots: kit.lots.length,
          onlyHere: exposure.entries,
        })
      : say.notSetUp,
    rows: [
      {
        href: '#/kit/bench',
        title: rows.bench,
        note: say.benchNote({
          units: `${place.mass === 'metric' ? 'g' : 'lb'}, ${degrees}`,
          paper: place.paper,
          ruleSet,
        }),
      },
      {
        href: '#/kit/scales',
        title: rows.scales,
        note: kit.scales.length === 0 ? say.scalesNone : instruments.join(', '),
      },
      ...(instruments.length === 0
        ? []
        : [{ href: '#/instruments', title: rows.checks, note: say.checksNote }]),
      {
        href: '#/kit/received',
        title: rows.received,
        note: last
          ? say.receivedLast(last.body.name, words.dates.near(last.atMs, nowMs, zone))
          : say.receivedNone,
      },
      {
        href: '#/kit/keeping',
        title: rows.keeping,
        note: [
          exposure.last ? say.keepingLast(words.dates.ago(exposure.last.atMs, nowMs)) : say.keepingNone,
          ...(exposure.entries > 0 ? [say.onlyHere(exposure.entries)] : []),
        ].join(', '),
      },
      { href: '#/limits', title: rows.limits, note: say.limitsNote },
      { href: '#/hazards', title: rows.hazards, note: say.hazardsNote },
    ],
  };
}
