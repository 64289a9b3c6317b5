/** What is expected of a ferment's pH before it is read: from culture, sugar and the maker's own earlier ferments. */
import { finalPh } from '#core/formula/final-ph.ts';
import type { PhPace } from './ph-line.ts';

/** A fitted ferment of the maker's own; `beyondPh`: how much further than expected of its sugar it fell, where it was read to its end. */
export type OwnFerment = PhPace & { readonly beyondPh?: number | undefined };

export type CulturePace = 'slow' | 'medium' | 'fast' | 'none' | 'unknown';

/** Means and one standard deviation; that of the half time is on its logarithm. Hours are warm hours (at 24 °C). */
export type PhPrior = {
  readonly lagHours: number;
  readonly lagSdHours: number;
  readonly halfHours: number;
  readonly halfSpreadRatio: number;
  readonly startPh: number;
  readonly startSdPh: number;
  readonly dropPh: number;
  readonly dropSdPh: number;
};

type Pace = Pick<PhPrior, 'lagHours' | 'lagSdHours' | 'halfHours' | 'halfSpreadRatio'>;

/** From memory, medium confidence: a medium starter at 22 to 24 °C reaches 5.3 in 20 to 36 h; the others around it. */
const PACES: Readonly<Record<CulturePace, Pace>> = {
  fast: { lagHours: 9, lagSdHours: 4, halfHours: 10, halfSpreadRatio: 0.45 },
  medium: { lagHours: 14, lagSdHours: 5, halfHours: 13, halfSpreadRatio: 0.45 },
  slow: { lagHours: 22, lagSdHours: 7, halfHours: 16, halfSpreadRatio: 0.45 },
  none: { lagHours: 30, lagSdHours: 12, halfHours: 24, halfSpreadRatio: 0.6 },
  unknown: { lagHours: 15, lagSdHours: 8, halfHours: 13, halfSpreadRatio: 0.55 },
};
/** Fresh mix (read: 5.6 to 5.8 for pork; spread from memory, medium confidence). */
const START_PH = 5.75;
const START_SD_PH = 0.15;
/** Buffering and conversion, means; the spread of the drop takes both in, with some sugar that nobody weighed (60 +- 12 mmol, 0.9 +- 0.07). */
const BUFFER_MMOL_PER_KG = 60;
const CONVERSION_FRACTION = 0.9;
const HIDDEN_G_PER_KG = 0.5;
const DROP_SPREAD_SHARE = 0.16;
const DROP_SD_PH = 0.08;
const STRAINS_STOP_PH = 4.4;
/** With the sugar unknown: 13 published ferments fell by 0.5 to 1.3 (read; fixtures/published/ferment-ph-curves.json), some of them not done. */
const UNKNOWN_DROP_PH = 0.95;
const UNKNOWN_DROP_SD_PH = 0.4;
/** How much a maker's own ferments differ from each other, on the logarithm: a guess that more ferments outweigh. */
const OWN_SPREAD_RATIO = 0.25;
const OWN_LAG_SD_HOURS = 3;
/**
 * Of what is not known of an end point, the part that a maker's meat and culture share: a guess, low enough that 8 in 10 holds for
 * invented makers who share nothing (tests/backtest/ferment-makers.ts). The rest is of each batch.
 */
const OWN_END_SHARE = 0.3;
/** How far off the end of a fitted line may be: readings near it, and one meter for all. */
const OWN_END_SD_PH = 0.05;

/**
 * The prior of one ferment's pH line. An estimate to start from; the readings soon outweigh it.
 *
 * Formula: drop from the charge balance of its sugar, not below 4.4; pace by culture, and drop, moved towards the maker's own fitted
 * ferments by their number: mean weighted by 1 / sd^2.
 * Units: g dextrose per kg; warm hours; pH. Valid: dextrose 0 to 10 g/kg; own ferments of the same culture and kind.
 * Source: final-ph.ts; paces from memory, medium confidence, and tuned on invented ferments; never a limit.
 * @throws RangeError as finalPh.
 * @example phPrior({ culture: 'medium' }).dropPh // => 0.95
 */
export function phPrior({
  culture,
  dextroseGPerKg,
  own = [],
}: {
  culture: CulturePace;
  dextroseGPerKg?: number | undefined;
  own?: readonly OwnFerment[] | undefined;
}): PhPrior {
  const pace = towardsOwn(PACES[culture], own);
  const start = { startPh: START_PH, startSdPh: START_SD_PH };
  if (dextroseGPerKg === undefined)
    return {
      ...pace,
      ...start,
      ...endTowardsOwn({ dropPh: UNKNOWN_DROP_PH, dropSdPh: UNKNOWN_DROP_SD_PH }, own),
    };
  const endPh = finalPh({
    startPh: START_PH,
    dextroseGPerKg: dextroseGPerKg + HIDDEN_G_PER_KG,
    bufferMmolPerKg: BUFFER_MMOL_PER_KG,
    conversionFraction: CONVERSION_FRACTION,
  });
  const dropPh = START_PH - Math.max(STRAINS_STOP_PH, endPh);
  const dropSdPh = Math.hypot(DROP_SD_PH, DROP_SPREAD_SHARE * dropPh);
  return { ...pace, ...start, ...endTowardsOwn({ dropPh, dropSdPh }, own) };
}

type End = Pick<PhPrior, 'dropPh' | 'dropSdPh'>;

/** What own ferments share beyond their sugar is believed by their number; what is of each batch alone stays unknown. */
function endTowardsOwn({ dropPh, dropSdPh }: End, own: readonly OwnFerment[]): End {
  const beyond = own.flatMap((ferment) => ferment.beyondPh ?? []);
  if (beyond.length === 0) return { dropPh, dropSdPh };
  const shared = OWN_END_SHARE * dropSdPh ** 2;
  const alone = dropSdPh ** 2 - shared;
  const ofMean = (alone + OWN_END_SD_PH ** 2) / beyond.length;
  const meanBeyondPh = beyond.reduce((sum, ph) => sum + ph, 0) / beyond.length;
  const endPh = START_PH - dropPh - (shared / (shared + ofMean)) * meanBeyondPh;
  return {
    dropPh: START_PH - Math.max(STRAINS_STOP_PH, endPh),
    dropSdPh: Math.sqrt(alone + (shared * ofMean) / (shared + ofMean)),
  };
}

/** A mean and its standard deviation. */
type Belief = { readonly value: number; readonly spreadRatio: number };

function towardsOwn(pace: Pace, own: readonly PhPace[]): Pace {
  if (own.length === 0) return pace;
  const blend = (prior: Belief, of: (fit: PhPace) => number, spreadRatio: number): Belief => {
    const ownMean = own.reduce((sum, fit) => sum + of(fit), 0) / own.length;
    const [trust, ownTrust] = [prior.spreadRatio ** -2, own.length / spreadRatio ** 2];
    return {
      value: (trust * prior.value + ownTrust * ownMean) / (trust + ownTrust),
      spreadRatio: Math.hypot(spreadRatio, (trust + ownTrust) ** -0.5),
    };
  };
  const lag = blend(
    { value: pace.lagHours, spreadRatio: pace.lagSdHours },
    (fit) => Math.max(0, fit.lagHours),
    OWN_LAG_SD_HOURS,
  );
  const lnHalf = blend(
    { value: Math.log(pace.halfHours), spreadRatio: pace.halfSpreadRatio },
    (fit) => Math.log(fit.halfHours),
    OWN_SPREAD_RATIO,
  );
  return {
    lagHours: lag.value,
    lagSdHours: lag.spreadRatio,
    halfHours: Math.exp(lnHalf.value),
    halfSpreadRatio: lnHalf.spreadRatio,
  };
}
