/** Temperature gates of the bench: go on, mind it, or stop and chill. Common practice, no published limit. */
import { keepsLimit, type Limit } from '#core/rules/rule.ts';

export type GateStage =
  | 'received'
  | 'lean-before-grinding'
  | 'fat-before-grinding'
  | 'after-grinding'
  | 'after-mixing';

function gate(
  section: string,
  goAtC: number,
  stopAboveC: number,
): { readonly go: Limit; readonly stop: Limit } {
  const limit = (value: number): Limit => ({
    value,
    unit: 'C',
    relation: '<=',
    basis: 'meat-temperature',
    source: { body: 'trade', title: 'common practice', section, standing: 'common-practice' },
  });
  return { go: limit(goAtC), stop: limit(stopAboveC) };
}

export const TEMPERATURE_GATES: Readonly<Record<GateStage, { readonly go: Limit; readonly stop: Limit }>> = {
  received: gate('meat on receipt', 4, 7),
  'lean-before-grinding': gate('lean before grinding', 2, 4),
  'fat-before-grinding': gate('fat before grinding, firm or part frozen', 0, 4),
  'after-grinding': gate('mince after grinding', 2, 4),
  'after-mixing': gate('mix before stuffing', 4, 5),
};
/** How long to chill before measuring again: common practice. */
export const CHILL_MINUTES = 20;

export type GateAnswer = {
  readonly light: 'go' | 'mind' | 'stop';
  readonly limit: Limit;
  readonly chillMinutes: number;
};

/**
 * Whether meat, fat or mix is cold enough for the next step. Going on past a stop is the maker's choice, with a reason on the record.
 *
 * Formula: go up to the lower gate, stop above the upper one, mind it between. Units: °C; min. Valid: any temperature.
 * Source: common practice for each stage; local law on receiving temperatures comes first.
 * @throws RangeError unless tempC is a finite number.
 * @example temperatureGate({ stage: 'after-grinding', tempC: 5.1 }).light // => 'stop'
 */
export function temperatureGate({ stage, tempC }: { stage: GateStage; tempC: number }): GateAnswer {
  if (!Number.isFinite(tempC))
    throw new RangeError(`temperatureGate: tempC requires a finite number, got ${tempC}`);
  const { go, stop } = TEMPERATURE_GATES[stage];
  if (keepsLimit(tempC, go)) return { light: 'go', limit: go, chillMinutes: 0 };
  if (keepsLimit(tempC, stop)) return { light: 'mind', limit: stop, chillMinutes: 0 };
  return { light: 'stop', limit: stop, chillMinutes: CHILL_MINUTES };
}
