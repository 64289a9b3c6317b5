/** Ways to set the whole amount of a line at once: on another base, or as a recipe prints it. */
import type { Amount, Basis, Bench } from '#core/formula/formula.ts';
import { rebase } from '#core/formula/rebase.ts';
import { type ReadAmount, readAmount } from '#core/formula/typed-amount.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { amountTexts, type LineDraft, NO_AMOUNT } from './line-draft.ts';
import { readLineDraft } from './line-read.ts';

/** The same grams on another base, for the batch at hand; where the amount cannot be read or turned, empty fields on the new base. */
export function switchBasis({
  line,
  basis,
  bench,
  place,
  words,
}: {
  line: LineDraft;
  basis: Basis;
  bench: Bench | null;
  place: Place;
  words: Words;
}): LineDraft {
  const read = readLineDraft(line, place);
  const turned = read.ok && bench ? turn(read.line.amount, basis, bench) : null;
  if (turned === null) return { ...line, basis, amount: NO_AMOUNT, exact: null };
  return {
    ...line,
    basis,
    amount: amountTexts(turned, place, words),
    exact: basis === 'pack-share' ? null : turned,
  };
}

function turn(amount: Amount, basis: Basis, bench: Bench): Amount | null {
  const noLean = basis === 'pct-of-lean' && !(bench.leanG > 0);
  const noPieces =
    (basis === 'per-piece' || amount.basis === 'per-piece') && !(bench.pieces !== null && bench.pieces > 0);
  if (noLean || noPieces) return null;
  if (basis !== 'pack-share') return rebase({ amount, basis, bench });
  const dose = rebase({ amount, basis: 'g-per-kg-meat', bench });
  return dose.basis === 'g-per-kg-meat'
    ? { basis, doseGPerKg: dose.doseGPerKg, packG: 0, packFraction: 0, minimumG: 0 }
    : null;
}

/** What a recipe prints, taken into the fields; or the code of what has to be asked. */
export function typeRecipe(
  line: LineDraft,
  text: string,
  place: Place,
  words: Words,
): { line: LineDraft; read: ReadAmount } {
  const read = readAmount(text, place.decimal);
  if (!read.ok) return { line, read };
  const { amount } = read;
  return {
    line: { ...line, basis: amount.basis, amount: amountTexts(amount, place, words), exact: amount },
    read,
  };
}
