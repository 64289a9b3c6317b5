import type { Words } from '#words/en.ts';
import type { EntryRow } from './record-view.ts';

export type ByView = {
  /** Whose entries there are, the most first. */
  readonly people: readonly { readonly value: string; readonly label: string; readonly note: string }[];
  /** Said where nobody can be chosen from. */
  readonly only: string | null;
  /** Null while no filter is on. */
  readonly filtered: {
    readonly title: string;
    readonly text: string;
    /** `more`: why it was struck or put right, when it was true, who wrote it. */
    readonly rows: readonly { key: string; what: string; more: string; struck: boolean }[];
  } | null;
};

/** The entries by certain initials. What nobody signed can be chosen too. */
export function byView({
  rows,
  chosen,
  words,
}: {
  rows: readonly EntryRow[];
  chosen: readonly string[];
  words: Words;
}): ByView {
  const say = words.record.filter;
  const counts = new Map<string, number>();
  for (const { by } of rows) counts.set(by, (counts.get(by) ?? 0) + 1);
  const people = [...counts].sort(([a, most], [b, least]) => least - most || (a < b ? -1 : 1));
  const name = (by: string) => by || say.nobody;
  const left = rows.filter(({ by }) => chosen.includes(by));
  const [first] = people;
  return {
    people: people.map(([by, count]) => ({ value: by, label: name(by), note: say.entries(count) })),
    only: people.length === 1 && first ? say.oneHand(first[0]) : null,
    filtered:
      chosen.length === 0
        ? null
        : {
            title: say.on(
              people
                .map(([by]) => by)
                .filter((by) => chosen.includes(by))
                .map(name),
            ),
            text: say.left(left.length, rows.length),
            rows: left.map(({ key, when, what, by, struck }) => {
              const [first = '', ...rest] = what.split('\n');
              return { key, what: first, more: [...rest, when, name(by)].join('\n'), struck };
            }),
          },
  };
}
