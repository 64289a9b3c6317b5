import type { EntryOf } from '#record/entry.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { localText } from '#ui/when-input.ts';
import { massUnit, temperature } from '#words/format.ts';

export type What = BodyOf<'received'>['what'];
type Cure = NonNullable<BodyOf<'received'>['cure']>;

/** Every field as it was typed; `when` null is now. Kept over a kill until it is saved. */
export type ReceivedForm = {
  readonly what: What | null;
  readonly name: string;
  readonly supplier: string;
  readonly lot: string;
  readonly when: string | null;
  readonly temp: string;
  readonly mass: string;
  readonly massUnit: 'g' | 'kg' | 'oz' | 'lb';
  readonly species: string | null;
  readonly packed: string;
  readonly bestBefore: string;
  readonly opened: string;
  readonly storage: NonNullable<BodyOf<'received'>['storage']> | null;
  readonly nitrite: string;
  readonly nitrate: string;
  readonly nitriteSalt: Cure['nitriteSalt'];
  readonly nitrateSalt: Cure['nitrateSalt'];
  readonly note: string;
  readonly reason: string;
};

export const WHATS = [
  'lean',
  'fat',
  'cure',
  'culture',
  'mould',
  'salt',
  'sugar',
  'spice',
  'casing',
  'other',
] as const satisfies readonly What[];

const CHILLED: ReadonlySet<What> = new Set(['lean', 'fat', 'culture', 'mould']);
const FROM_AN_ANIMAL: ReadonlySet<What> = new Set(['lean', 'fat']);
const GAME: ReadonlySet<string> = new Set(['wild-boar', 'bear', 'venison']);

export function asksTemperature(what: What | null): boolean {
  return what !== null && CHILLED.has(what);
}
export function asksAnimal(what: What | null): boolean {
  return what !== null && FROM_AN_ANIMAL.has(what);
}
export function asksPack(what: What | null): boolean {
  return what === 'culture' || what === 'mould';
}
export function isGame(species: string | null): boolean {
  return species !== null && GAME.has(species);
}

export function newForm(what: What | null, place: Place): ReceivedForm {
  return {
    what,
    name: '',
    supplier: '',
    lot: '',
    when: null,
    temp: '',
    mass: '',
    massUnit:
      place.mass === 'metric'
        ? asksAnimal(what)
          ? 'kg'
          : 'g'
        : massUnit(asksAnimal(what) ? 1000 : 0, place),
    species: null,
    packed: '',
    bestBefore: '',
    opened: '',
    storage: null,
    nitrite: '',
    nitrate: '',
    nitriteSalt: 'NaNO2',
    nitrateSalt: 'NaNO3',
    note: '',
    reason: '',
  };
}

/** An entry as it was typed, to be corrected. */
export function formOf({ body, atMs }: EntryOf<'received'>, place: Place): ReceivedForm {
  const {
    what,
    name,
    supplier,
    lot,
    species,
    tempC,
    massG,
    packedOnMs,
    bestBeforeMs,
    openedOnMs,
    storage,
    cure,
    typed,
    note,
  } = body;
  const asTyped = (field: string, value: number | undefined) =>
    value === undefined ? '' : (typed?.[field]?.text ?? String(value).replace('.', place.decimal));
  const unit = typed?.massG?.unit;
  const day = (ms: number | undefined) => (ms === undefined ? '' : localText(ms).slice(0, 10));
  return {
    ...newForm(what, place),
    name,
    supplier,
    lot,
    when: localText(atMs),
    temp: tempC === undefined ? '' : temperature(tempC, place).value,
    mass: asTyped('massG', massG),
    massUnit: unit === 'kg' || unit === 'oz' || unit === 'lb' ? unit : 'g',
    species: species ?? null,
    packed: day(packedOnMs),
    bestBefore: day(bestBeforeMs),
    opened: day(openedOnMs),
    storage: storage ?? null,
    nitrite: asTyped('nitritePct', cure?.nitritePct),
    nitrate: asTyped('nitratePct', cure?.nitratePct),
    ...(cure ? { nitriteSalt: cure.nitriteSalt, nitrateSalt: cure.nitrateSalt } : {}),
    note: note ?? '',
  };
}

/** A kept form, or null where another build kept another shape. */
export function restoreReceived(kept: unknown): ReceivedForm | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const form = kept as Record<string, unknown>;
  const texts = [
    'name',
    'supplier',
    'lot',
    'temp',
    'mass',
    'packed',
    'bestBefore',
    'opened',
    'nitrite',
    'nitrate',
    'note',
    'reason',
  ];
  const known =
    texts.every((field) => typeof form[field] === 'string') &&
    (form.what === null || WHATS.some((what) => what === form.what)) &&
    (form.when === null || typeof form.when === 'string') &&
    (form.species === null || typeof form.species === 'string') &&
    (form.storage === null || ['frozen', 'out-of-freezer'].includes(String(form.storage))) &&
    ['g', 'kg', 'oz', 'lb'].includes(String(form.massUnit)) &&
    ['NaNO2', 'KNO2'].includes(String(form.nitriteSalt)) &&
    ['NaNO3', 'KNO3'].includes(String(form.nitrateSalt));
  return known ? (kept as ReceivedForm) : null;
}
