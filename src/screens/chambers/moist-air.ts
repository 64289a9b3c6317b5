import {
  dewPointC,
  saturationPressurePa,
  vapourPressureDeficitPa,
  vapourPressurePa,
} from '#core/air/psychro.ts';
import { wetBulbC } from '#core/air/wet-bulb.ts';
import type { Source } from '#core/rules/rule.ts';
import type { Place } from '#record/place.ts';
import type { FigureProps } from '#ui/Figure.tsx';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import { humidityText, tempText } from './air.ts';

const HYLAND_WEXLER: Source = {
  body: 'ASHRAE',
  title: 'Handbook: Fundamentals (2017), chapter 1, equations 5 and 6 (Hyland and Wexler, 1983)',
  section: 'as in an open implementation',
  standing: 'read-second-hand',
};
const WET_BULB: Source = {
  body: 'ASHRAE',
  title: 'Handbook: Fundamentals (2017), chapter 1, equations 33 and 35',
  section: 'as in an open implementation',
  standing: 'read-second-hand',
};
const DEFINITION: Source = {
  body: '',
  title: 'definitions of relative humidity, dew point and deficit',
  section: '',
  standing: 'derived',
};

/** Where no sausage hangs, nobody needs to know how cold its skin would be. */
const COLDEST_C = -40;
const WARMEST_C = 60;
/** Drier than this a dew point means nothing to a maker, and the reading is a slip or a broken hygrometer. */
const LEAST_HUMIDITY_PCT = 1;

/** What a reading says of the air beyond itself. Nothing without humidity. */
export function moistAirFigures(
  { airC, rhPct }: { airC: number; rhPct?: number | null | undefined },
  place: Place,
  words: Words,
): FigureProps[] {
  if (rhPct === undefined || rhPct === null || rhPct < LEAST_HUMIDITY_PCT) return [];
  const say = words.chambers;
  const air = { tempC: airC, humidityPct: rhPct };
  const kPa = (pressurePa: number) => ({ value: decimal(pressurePa / 1000, 2, place), unit: 'kPa' });
  const rows = [
    { label: say.working.air, value: tempText(airC, place) },
    { label: say.working.humidity, value: humidityText(rhPct, place) },
    { label: say.working.saturation, value: joined(kPa(saturationPressurePa({ tempC: airC }))) },
    { label: say.working.vapour, value: joined(kPa(vapourPressurePa(air))) },
  ];
  const common = {
    rows,
    caution: say.working.caution,
    sources: [HYLAND_WEXLER, DEFINITION].map(words.workings.source),
    words: words.workings.words,
  };
  const dewPoint = temperature(dewPointC(air), place);
  const deficit = kPa(vapourPressureDeficitPa(air));
  const bulb = airC >= COLDEST_C && airC <= WARMEST_C ? temperature(wetBulbC(air), place) : null;
  return [
    {
      label: say.one.dewPoint,
      ...dewPoint,
      note: say.one.dewPointNote,
      working: {
        ...say.working.dewPoint,
        ...common,
        result: { label: say.one.dewPoint, value: joined(dewPoint) },
      },
    },
    {
      label: say.one.deficit,
      ...deficit,
      note: say.one.deficitNote,
      working: {
        ...say.working.deficit,
        ...common,
        result: { label: say.one.deficit, value: joined(deficit) },
      },
    },
    ...(bulb === null
      ? []
      : [
          {
            label: say.one.wetBulb,
            ...bulb,
            note: say.one.wetBulbNote,
            working: {
              ...say.working.wetBulb,
              ...common,
              sources: [HYLAND_WEXLER, WET_BULB].map(words.workings.source),
              result: { label: say.one.wetBulb, value: joined(bulb) },
            },
          },
        ]),
  ];
}
