import { useMemo } from 'react';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useKit } from '#store/live.ts';
import { useDraft } from '#store/use-draft.ts';
import { useFormulas } from '#store/use-formulas.ts';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { restoreBench } from './bench-input.ts';
import { FormulaPage } from './FormulaPage.tsx';

/** `id` is that of the formula, and behind a "~" the number of the version to begin with where it is not the newest. */
export function FormulaScreen({ words, place, id: named }: { words: Words; place: Place; id: string }) {
  const [id = '', number] = named.split('~');
  const saved = useFormulas();
  const kit = useKit();
  const kept = useDraft(`formula-bench ${id}`, restoreBench);
  const every = useMemo(() => saved?.flatMap(({ versions }) => versions) ?? [], [saved]);
  if (saved === undefined || kit === undefined || kept.value === undefined)
    return <Waiting label={words.app.waiting} />;
  const subject: SubjectId = `formula:${id}`;
  const versions = saved.find((each) => each.id === subject)?.versions ?? [];
  const newest = versions.at(-1);
  if (!newest) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  return (
    <FormulaPage
      key={named}
      {...{ words, place, id, versions, newest, kept }}
      first={number === undefined ? null : (versions[Number(number) - 1]?.id ?? null)}
      scales={kit.scales}
      saved={every}
    />
  );
}
