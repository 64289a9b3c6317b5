import type { Place } from '#record/place.ts';
import { useBatches } from '#store/live.ts';
import { useDraft } from '#store/use-draft.ts';
import { useFormulas } from '#store/use-formulas.ts';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { OpenBatch } from './OpenBatch.tsx';
import { restoreOpen } from './open-batch-view.ts';

export function OpenBatchScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const saved = useFormulas();
  const batches = useBatches();
  const kept = useDraft(`open-batch ${id}`, restoreOpen);
  if (saved === undefined || batches === undefined || kept.value === undefined)
    return <Waiting label={words.app.waiting} />;
  const versions = saved.find((each) => each.id === `formula:${id}`)?.versions ?? [];
  const version = versions.at(-1);
  if (!version) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const lots = batches.map(({ opened }) => opened.body.lot);
  return <OpenBatch {...{ words, place, id, version, kept, lots }} number={versions.length} />;
}
