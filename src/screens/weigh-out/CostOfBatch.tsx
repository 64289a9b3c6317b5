import { useState } from 'react';
import type { Batch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import { type CostTexts, costView, firstCosts } from './cost-view.ts';
import styles from './WeighOutScreen.module.css';

/** Prices as paid, and what a kilo of mix and of the finished product comes to. May be left out. */
export function CostOfBatch({ batch, place, words }: { batch: Batch; place: Place; words: Words }) {
  const { saving, save } = useAppend(place.initials);
  const [texts, setTexts] = useState<CostTexts | null>(null);
  const say = words.weighOut.cost;
  const shown = texts ?? firstCosts(batch, place, words);
  const view = costView(batch, shown, place, words);
  const { body } = view;
  const saved = words.app.unsaved(saving);
  const keep = async () => {
    if (body === null) return;
    const before = batch.priced;
    const strikes = before ? { strikes: { id: before.id, reason: say.strikeReason } } : {};
    const { ok } = await save([{ kind: 'priced', subject: batch.id, body, ...strikes }]);
    if (ok) setTexts(null);
  };
  return (
    <>
      <Button kind="quiet" onPress={() => setTexts(shown)}>
        {say.title}
      </Button>
      {texts !== null && (
        <Sheet
          open
          onClose={() => setTexts(null)}
          title={say.title}
          closeLabel={words.app.close}
          acts={
            <Button
              kind="primary"
              disabled={body === null || saving.state === 'saving'}
              onPress={() => void keep()}
            >
              {words.bench.save}
            </Button>
          }
        >
          <p>{say.hint}</p>
          {view.fields.map(({ key, label, text, unit, problem }) => (
            <NumberField
              key={key}
              label={label}
              text={text}
              onText={(typed) => setTexts({ ...shown, [key]: typed })}
              {...(unit ? { unit } : {})}
              {...(problem ? { problem } : {})}
            />
          ))}
          <dl aria-live="polite">
            {view.results.map(({ label, value }) => (
              <div key={label} className={styles.result}>
                <dt>{label}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
          <p>{view.note}</p>
          {saved && <SavedMark state={saved.state} text={saved.text} />}
        </Sheet>
      )}
    </>
  );
}
