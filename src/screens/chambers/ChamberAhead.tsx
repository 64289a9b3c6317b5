import { type ReactNode, useMemo, useState } from 'react';
import type { Batch } from '#record/batch.ts';
import type { ChamberAir } from '#record/chamber-air.ts';
import { knownAir } from '#record/drying-air.ts';
import { batchGiven } from '#record/drying-batch.ts';
import type { Place } from '#record/place.ts';
import { zoneAt } from '#store/clock.ts';
import { useBatchesAhead } from '#store/use-batch-ahead.ts';
import { Notice } from '#ui/Notice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { Sentence } from '#ui/Sentence.tsx';
import type { Words } from '#words/en.ts';
import { chamberAhead } from './ahead-view.ts';
import styles from './ChamberScreen.module.css';

const HOUR_MS = 3_600_000;
const MOST_G = 1_000_000;

/** What hangs here needs, now and in the weeks ahead; and what it would need with more beside it. */
export function ChamberAhead({
  inside,
  everInside,
  batches,
  air,
  place,
  nowMs,
  words,
  children,
}: {
  inside: readonly Batch[];
  everInside: readonly Batch[];
  /** All of the book: those of this chamber that are finished speak for what hangs. */
  batches: readonly Batch[];
  air: ChamberAir;
  place: Place;
  nowMs: number;
  words: Words;
  /** The picture that stands below the sentence. */
  children: ReactNode;
}) {
  const [more, setMore] = useState(place.mass === 'metric' ? '20' : '44');
  const hour = Math.ceil(nowMs / HOUR_MS) * HOUR_MS;
  const given = useMemo(() => {
    const known = knownAir(air);
    return inside.map((batch) => batchGiven(batch, { batches, air: known, nowMs: hour }));
  }, [inside, batches, air, hour]);
  const told = useBatchesAhead(given);
  const view = useMemo(() => {
    const expected = inside.map((batch) => ({ batch, ahead: told.of(batch.id) }));
    return chamberAhead({ inside: expected, everInside, air, place, nowMs: hour, zone: zoneAt(hour), words });
  }, [inside, told, everInside, air, place, hour, words]);
  const unit = place.mass === 'metric' ? 'kg' : 'lb';
  const read = readQuantity({ text: more, unit, decimal: place.decimal, least: 0, most: MOST_G });
  const addedG = read.ok ? read.value : null;
  const withMore = useMemo(() => (addedG && view ? view.withMore(addedG) : null), [addedG, view]);
  const say = words.chamberAhead;
  if (view === null || told.failed)
    return (
      <>
        {told.failed && <p role="status">{say.failed}</p>}
        {children}
      </>
    );
  return (
    <section className={styles.section}>
      <h2>{say.title}</h2>
      <Sentence small tokens={view.sentence} />
      {view.wetted && <Notice kind="caution">{view.wetted}</Notice>}
      {children}
      <h3>{say.table}</h3>
      <table className={styles.table}>
        <caption className="heard">{say.table}</caption>
        <thead>
          <tr>
            {Object.entries(say.columns).map(([key, label]) => (
              <th key={key} scope="col">
                {label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {view.weeks.map(({ key, when, humidity, water }) => (
            <tr key={key}>
              <th scope="row">{when}</th>
              <td>{humidity}</td>
              <td>{water}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Sentence small tokens={view.carried} />
      {view.over && <Sentence small tokens={view.over} />}
      <h3>{say.more.title}</h3>
      <NumberField label={say.more.label} text={more} onText={setMore} unit={unit} />
      {withMore && (
        <div aria-live="polite">
          <Sentence small tokens={withMore.sentence} />
          {withMore.verdict && <Sentence small tokens={withMore.verdict} />}
        </div>
      )}
      <p className={styles.caution}>{say.caution}</p>
      <p className={styles.caution}>{view.source}</p>
    </section>
  );
}
