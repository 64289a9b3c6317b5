import type { Limit, Source } from '#core/rules/rule.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';

export type SourceView = { readonly text: string; readonly standing: string };
export type LimitView = {
  readonly title: string;
  /** What the limit is for, where one name has several. */
  readonly of: string | null;
  /** One, or the rows of a table. */
  readonly values: readonly string[];
  readonly basis: string;
  readonly source: SourceView;
};
export type LimitGroup = {
  readonly title: string;
  readonly note: string | null;
  readonly limits: readonly LimitView[];
};

/** A limit with its relation, base, source and standing, in words. */
export function limitView(
  { title, of = null, limit }: { title: string; of?: string | null; limit: Limit },
  words: Words,
  place: Place,
): LimitView {
  const { limits, workings } = words;
  const { label, value } = workings.limit({ ...limit, unit: limits.unit(limit.unit) }, place);
  return {
    title,
    of,
    values: [value],
    basis: limits.basis(limit.basis) ?? label,
    source: workings.source(limit.source),
  };
}

export function sourceView(source: Source, words: Words): SourceView {
  return words.workings.source(source);
}
