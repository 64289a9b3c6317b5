import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { type CureQuestion, SEEN_NITRITE_PCT } from './cure-question.ts';

/** The question in words, with what was typed as it was typed. */
export function cureQuestionText(
  question: CureQuestion,
  typed: { readonly nitrite: string; readonly nitrate: string },
  place: Place,
  words: Words,
): string {
  const say = words.received.question;
  const exactly = (value: number) => words.workings.exactly(value, place);
  const nitrite = typed.nitrite.trim();
  switch (question.code) {
    case 'fraction':
      return say.fraction(nitrite, exactly(question.meantPct));
    case 'tenfold':
      return say.tenfold(nitrite, exactly(question.meantPct));
    case 'pure':
      return say.pure(nitrite);
    case 'none':
      return say.none;
    case 'nitrate-only':
      return say.nitrateOnly;
    case 'nitrate-high':
      return say.nitrateHigh(typed.nitrate.trim());
    case 'unusual':
      return say.unusual(
        nitrite,
        SEEN_NITRITE_PCT.map(({ fromPct, toPct }) => say.range(exactly(fromPct), exactly(toPct))).join(', '),
      );
  }
}
