/** What a kilo of the finished product has cost: prices as paid for what went in, losses and samples counted. */
import { type Cost, costOfFinished } from '#core/formula/cost.ts';
import { isMeat } from '#core/formula/formula.ts';
import type { Batch } from '#record/batch.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { weighedFigures } from '#record/weigh-out-figures.ts';
import { readQuantity } from '#ui/quantity-input.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';

export type CostTexts = Readonly<Record<string, string>>;

export type CostView = {
  readonly fields: readonly {
    key: string;
    label: string;
    text: string;
    unit: string;
    problem: string | null;
  }[];
  readonly results: readonly { label: string; value: string }[];
  readonly note: string;
  /** What is kept; null while a field is wrong or no price was typed. */
  readonly body: BodyOf<'priced'> | null;
};

const MEAT = 'meat';
const OTHER = 'other';
const SAMPLED = 'sampled';
const MOST_MONEY = 10_000_000;

/** Fields as they were kept, or empty. */
export function firstCosts({ priced }: Batch, place: Place, words: Words): CostTexts {
  if (!priced) return {};
  const text = (value: number) => words.workings.exactly(value, place).replaceAll('\u202f', '');
  return {
    ...Object.fromEntries(priced.body.costs.map(({ of, cents }) => [of, text(cents / 100)])),
    [SAMPLED]: text(priced.body.sampledPct),
  };
}

export function costView(batch: Batch, texts: CostTexts, place: Place, words: Words): CostView {
  const say = words.weighOut.cost;
  const lines = batch.opened.body.formula.lines.filter(({ role }) => !isMeat(role));
  const asked = [
    { key: MEAT, label: say.meat },
    ...lines.map(({ id, name }) => ({ key: id, label: name })),
    { key: OTHER, label: say.other },
    { key: SAMPLED, label: say.sampled },
  ];
  const read = asked.map(({ key, label }) => {
    const text = texts[key] ?? '';
    const most = key === SAMPLED ? 90 : MOST_MONEY;
    const value = readQuantity({ text, unit: '', decimal: place.decimal, least: 0, most });
    const wrong = !value.ok && value.problem !== 'empty';
    const bounds = { least: '0', most: decimal(most, 0, place) };
    return {
      ...{ key, label, text, value: value.ok ? value.value : null },
      unit: key === SAMPLED ? '%' : '',
      problem: wrong ? words.fields.problem(value.problem, bounds) : null,
    };
  });
  const costs = read.flatMap(({ key, value }) =>
    key === SAMPLED || value === null ? [] : [{ of: key, cents: Math.round(100 * value) }],
  );
  const sampledPct = read.find(({ key }) => key === SAMPLED)?.value ?? 0;
  const wrong = read.some(({ problem }) => problem !== null);
  const body = wrong || costs.length === 0 ? null : { costs, sampledPct };
  const missing = read.filter(({ key, value }) => key !== OTHER && key !== SAMPLED && value === null).length;
  return {
    fields: read.map(({ value, ...field }) => field),
    results: body ? resultsOf(batch, body, place, words) : [],
    note: [missing > 0 ? say.missing(missing) : '', lossOf(batch).measured ? say.measured : say.planned]
      .filter(Boolean)
      .join(' '),
    body,
  };
}

/** By the scale once every piece is down; the plan until then. */
function lossOf({ pieces, plan }: Batch): { lossPct: number; measured: boolean } {
  const greenG = pieces.reduce((sumG, each) => sumG + each.greenG, 0);
  const down = pieces.every(({ status }) => status === 'taken-down');
  if (pieces.length === 0 || !down) return { lossPct: plan.targetLossPct, measured: false };
  const lastG = pieces.reduce(
    (sumG, { greenG: own, weighings }) => sumG + (weighings.at(-1)?.netG ?? own),
    0,
  );
  return { lossPct: (100 * (greenG - lastG)) / greenG, measured: true };
}

function resultsOf(batch: Batch, body: BodyOf<'priced'>, place: Place, words: Words): CostView['results'] {
  const say = words.weighOut.cost;
  const { pieces } = batch;
  const stuffedG = pieces.reduce((sumG, { greenG }) => sumG + greenG, 0);
  const mixG = weighedFigures(batch)?.mixG ?? 0;
  const greenG = stuffedG > 0 ? stuffedG : mixG;
  const { lossPct, measured } = lossOf(batch);
  if (!(greenG > 0 && lossPct >= 0)) return [];
  const costs: Cost[] = body.costs.map(({ of, cents }) => ({ id: of, priceCents: cents }));
  const found = costOfFinished({
    ...{ costs, greenG, lossPct, sampledPct: body.sampledPct },
    pieces: pieces.length > 0 ? pieces.length : null,
  });
  const money = (cents: number) => decimal(cents / 100, 2, place);
  const about = measured ? '' : '~';
  return [
    { label: say.total, value: money(found.totalCents) },
    ...(mixG > 0 ? [{ label: say.perKgMix, value: money((1000 * found.totalCents) / mixG) }] : []),
    { label: say.perKg, value: `${about}${money(found.centsPerKg)}` },
    ...(found.centsPerPiece === null ? [] : [{ label: say.perPiece, value: money(found.centsPerPiece) }]),
  ];
}
