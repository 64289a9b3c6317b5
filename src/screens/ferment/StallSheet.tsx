import { useState } from 'react';
import type { StallFacts, StallStep } from '#core/ferment/stall.ts';
import type { BodyOf } from '#record/kinds.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { Notice } from '#ui/Notice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { Tick } from '#ui/Tick.tsx';
import styles from './FermentScreen.module.css';
import type { SheetProps } from './sheet.ts';
import { useStallAnswers } from './stall-answers.ts';
import { stallView } from './stall-view.ts';

/** A pH that does not fall: asks only what the log does not know, and ends in an action on the record. */
export function StallSheet({
  place,
  words,
  saved,
  log,
  onSave,
  onClose,
}: SheetProps<BodyOf<'action-taken'>> & { log: StallFacts | null }) {
  const say = words.fermentStall;
  const { quantities, meter, setMeter, answers } = useStallAnswers(place);
  const [ticked, setTicked] = useState<readonly StallStep[]>([]);
  const [more, setMore] = useState('');
  const [prevention, setPrevention] = useState('');
  const [shown, setShown] = useState(false);
  const view = stallView({ log, answers, place, words });
  const done = [
    ...(view?.steps ?? []).filter(({ code }) => ticked.includes(code)).map(({ text }) => text),
    more.trim(),
  ].filter(Boolean);
  const save = () => {
    setShown(true);
    if (done.length === 0 || view === null) return;
    const action = done.join('; ').slice(0, 1000);
    onSave({ about: 'stall', cause: view.cause, action, product: '', prevention: prevention.trim() }, null);
  };
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.title}
      closeLabel={words.app.close}
      acts={
        view && (
          <Button kind="primary" disabled={saved?.state === 'saving'} onPress={save}>
            {say.save}
          </Button>
        )
      }
    >
      <Sentence tokens={view?.sentence ?? say.sentence.noRoom} />
      {view && (
        <>
          <h3>{say.known}</h3>
          <dl className={styles.facts}>
            {view.known.map(({ label, value }) => (
              <div key={label}>
                <dt>{label}</dt>
                <dd>{value}</dd>
              </div>
            ))}
          </dl>
          {view.fields.length > 0 && <h3>{say.ask}</h3>}
          {view.fields.map((field) =>
            field === 'meter' ? (
              <Choice
                key={field}
                label={say.asks.meter}
                options={(['good', 'failed', 'unsaid'] as const).map((value) => ({
                  value,
                  label: say.meterOptions[value],
                }))}
                value={meter}
                onValue={setMeter}
              />
            ) : (
              <NumberField
                key={field}
                label={say.asks[field]}
                text={quantities[field].quantity.text}
                onText={quantities[field].quantity.onText}
                unit={quantities[field].unit}
                {...(quantities[field].quantity.empty || quantities[field].quantity.read.ok
                  ? {}
                  : {
                      problem: words.fields.problem(quantities[field].quantity.read.problem, {
                        least: quantities[field].least,
                        most: quantities[field].most,
                      }),
                    })}
              />
            ),
          )}
          <h3>{say.likely}</h3>
          {view.causes.length === 0 && <p>{say.noCause}</p>}
          <ul>
            {view.causes.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          <h3>{say.steps}</h3>
          <ul className={styles.steps}>
            {view.steps.map(({ code, text }) => (
              <Tick
                key={code}
                label={text}
                checked={ticked.includes(code)}
                onChecked={(on) => setTicked(on ? [...ticked, code] : ticked.filter((each) => each !== code))}
              />
            ))}
          </ul>
          <Notice kind="caution">
            {view.never.map((text) => (
              <p key={text}>{text}</p>
            ))}
          </Notice>
          <p className={styles.caution}>{say.practice}</p>
          <TextField
            label={say.more}
            text={more}
            onText={setMore}
            maxLength={400}
            long
            {...(shown && done.length === 0 ? { problem: say.needed } : {})}
          />
          <TextField label={say.prevention} text={prevention} onText={setPrevention} maxLength={1000} long />
        </>
      )}
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
