/** What one check of an instrument comes to: its finding, its figures, and the working of them. */
import { iceCheck, WET_SALT_LIMIT, wetSaltCheck } from '#core/ferment/instrument-check.ts';
import { correctedPh, METER_LIMITS, nernstMvPerPh } from '#core/ferment/meter-check.ts';
import { COUNTED_UNTIL_PH } from '#core/ferment/ph-reading.ts';
import type { Finding, Limit } from '#core/rules/rule.ts';
import type { EntryOf } from '#record/entry.ts';
import { type Check, meterCheckOf, scaleCheckOf } from '#record/instruments.ts';
import type { Place } from '#record/place.ts';
import type { WorkingText } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, temperature } from '#words/format.ts';

export type FigureText = {
  key: string;
  label: string;
  value: string;
  unit?: string;
  note?: string;
  about?: boolean;
};

type Given = { place: Place; words: Words };

export function findingOf(check: Check): Finding | null {
  switch (check.kind) {
    case 'meter-checked':
      return meterCheckOf(check).finding;
    case 'thermometer-checked':
      return iceCheck(check.body).finding;
    case 'hygrometer-checked':
      return wetSaltCheck(check.body).finding;
    case 'scale-checked':
      return scaleCheckOf(check)?.finding ?? null;
  }
}

export function figuresOf(check: Check, { place, words }: Given): FigureText[] {
  const say = words.instruments.figures;
  const signed = (value: number, places: number) => `${value > 0 ? '+' : ''}${decimal(value, places, place)}`;
  switch (check.kind) {
    case 'meter-checked': {
      const { offsetMv, slopePct, isWorn, correction } = meterCheckOf(check);
      return [
        ...(offsetMv === null
          ? []
          : [{ key: 'offset', label: say.offset, value: signed(offsetMv, 1), unit: 'mV' }]),
        ...(slopePct === null
          ? []
          : [
              {
                key: 'slope',
                label: say.slope,
                value: decimal(slopePct, 1, place, 'down'),
                unit: '%',
                ...(isWorn ? { note: say.worn } : {}),
              },
            ]),
        ...(correction === null
          ? []
          : [
              {
                key: 'corrected',
                label: say.corrected(decimal(COUNTED_UNTIL_PH.value, 2, place)),
                value: decimal(correctedPh({ ph: COUNTED_UNTIL_PH.value, correction }), 2, place),
                about: true,
                note: say.correctedNote,
              },
            ]),
      ];
    }
    case 'thermometer-checked':
      return [
        { key: 'shown', label: say.shownIce, ...temperature(check.body.shownC, place) },
        {
          key: 'add',
          label: say.add,
          value: signed(iceCheck(check.body).offsetC * (place.temperature === 'F' ? 1.8 : 1), 1),
          unit: place.temperature === 'F' ? '°F' : '°C',
          note: say.addNote,
        },
      ];
    case 'hygrometer-checked':
      return [
        { key: 'shown', label: say.shownSalt, value: decimal(check.body.shownRhPct, 1, place), unit: '%' },
        {
          key: 'add',
          label: say.add,
          value: signed(wetSaltCheck(check.body).offsetRhPct, 1),
          unit: '%',
          note: say.addNote,
        },
      ];
    case 'scale-checked':
      return [{ key: 'off', label: say.off, value: grams(check.body.shownG - check.body.weightG, place) }];
  }
}

export function workingOf(check: Check, { place, words }: Given): WorkingText | null {
  const say = words.instruments.work;
  const finding = findingOf(check);
  const shared = (limits: readonly Limit[]) => ({
    sources: limits.map(({ source }) => words.workings.source(source)),
    words: words.workings.words,
  });
  switch (check.kind) {
    case 'meter-checked':
      return { ...meterRows(check, place, words), ...shared([METER_LIMITS.slopeLow, METER_LIMITS.error]) };
    case 'thermometer-checked':
      return {
        title: say.ice.title,
        equation: say.ice.equation,
        rows: [{ label: say.shown, value: joined(temperature(check.body.shownC, place)) }],
        ...limitOf(finding, place, words),
        ...shared(finding?.limit ? [finding.limit] : []),
      };
    case 'hygrometer-checked':
      return {
        title: say.salt.title,
        equation: say.salt.equation,
        rows: [
          { label: say.shown, value: `${decimal(check.body.shownRhPct, 1, place)}\u00a0%` },
          { label: say.rested, value: decimal(check.body.restedHours, 0, place, 'down') },
        ],
        ...limitOf(finding, place, words),
        ...shared([WET_SALT_LIMIT]),
      };
    case 'scale-checked':
      return {
        title: say.scale.title,
        equation: say.scale.equation,
        rows: [
          { label: say.weight, value: grams(check.body.weightG, place) },
          { label: say.shown, value: grams(check.body.shownG, place) },
        ],
        ...limitOf(finding, place, words),
        ...shared(finding?.limit ? [finding.limit] : []),
      };
  }
}

function limitOf(finding: Finding | null, place: Place, words: Words) {
  return finding?.limit ? { limit: limitText(finding.limit, place, words) } : {};
}

function limitText(limit: Limit, place: Place, words: Words): { label: string; value: string } {
  const { label, value } = words.workings.limit({ ...limit, unit: words.limits.unit(limit.unit) }, place);
  return { label: words.limits.basis(limit.basis) ?? label, value };
}

function meterRows(check: EntryOf<'meter-checked'>, place: Place, words: Words) {
  const say = words.instruments.work.meter;
  const { buffers, offsetMv, slopePct } = meterCheckOf(check);
  const { shownIn, sevenC, fourC, sevenShown, fourShown } = check.body;
  const shown = [sevenShown, fourShown].filter((value) => value !== undefined);
  const meanC = [sevenC, fourC].filter((value) => value !== undefined);
  const bufferC = meanC.reduce((sum, value) => sum + value, 0) / Math.max(1, meanC.length);
  return {
    title: say.title,
    equation: shownIn === 'pH' ? say.ph : say.mV,
    rows: [
      ...buffers.map(({ buffer, truePh, errorPh }, at) => ({
        label: words.instruments.figures.shown(buffer),
        value: `${decimal(shown[at] ?? Number.NaN, shownIn === 'pH' ? 2 : 0, place)}${shownIn === 'mV' ? '\u00a0mV' : ''}`,
        note: [
          words.instruments.figures.truth(
            decimal(truePh, 2, place),
            joined(temperature(meanC[at] ?? bufferC, place, 0)),
          ),
          ...(errorPh === null ? [] : [`${say.error(buffer)} ${decimal(errorPh, 2, place)}`]),
        ].join('; '),
      })),
      { label: say.nernst, value: `${decimal(nernstMvPerPh(bufferC), 2, place)}\u00a0mV` },
      ...(offsetMv === null ? [] : [{ label: say.offset, value: `${decimal(offsetMv, 1, place)}\u00a0mV` }]),
      ...(slopePct === null
        ? []
        : [{ label: say.slope, value: `${decimal(slopePct, 1, place, 'down')}\u00a0%` }]),
    ],
    limit: limitText(METER_LIMITS.error, place, words),
  };
}

export function grams(massG: number, place: Place): string {
  return joined(mass(massG, 0.01, place));
}
