import { useAllEntries, useBatches, useKit, usePlace, useStart, useTouching } from '#store/live.ts';
import { useFormulas } from '#store/use-formulas.ts';
import { useHealth } from '#store/use-health.ts';

/** What the hooks say, as text that a test can read. */
export function Hooks() {
  const start = useStart();
  const entries = useAllEntries();
  const touching = useTouching('batch:a');
  const place = usePlace();
  const kit = useKit();
  const formulas = useFormulas();
  const batches = useBatches();
  const health = useHealth();
  const said = {
    start: start.code,
    entries: entries?.length,
    touching: touching?.length,
    chosen: place?.chosen,
    scales: kit?.scales.length,
    formulas: formulas?.length,
    batches: batches?.length,
    health: health?.entries,
  };
  return <output>{JSON.stringify(said)}</output>;
}
