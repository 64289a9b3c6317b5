import type { Place } from '#record/place.ts';
import { useDraft } from '#store/use-draft.ts';
import { useFormulas } from '#store/use-formulas.ts';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { FormulaEditor } from './FormulaEditor.tsx';
import { restoreDraft } from './formula-draft.ts';

/** `id` is empty for a new formula. */
export function FormulaEditScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const saved = useFormulas();
  const kept = useDraft(`formula-edit ${id || 'new'}`, restoreDraft);
  if (saved === undefined || kept.value === undefined) return <Waiting label={words.app.waiting} />;
  const versions = saved.find((each) => each.id === `formula:${id}`)?.versions ?? [];
  if (id !== '' && versions.length === 0)
    return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  return <FormulaEditor {...{ words, place, id, versions, kept }} />;
}
