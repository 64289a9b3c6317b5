import { useRef, useState } from 'react';
import { MAX_FILE_CHARS } from '#record/file.ts';
import type { Place } from '#record/place.ts';
import { type ImportPlan, planImport, planRecovery, type TakenIn, takeIn } from '#store/backup.ts';
import { isSealed, unseal } from '#store/sealed.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Passphrase } from '#ui/Passphrase.tsx';
import type { Words } from '#words/en.ts';
import { importView } from './import-view.ts';
import styles from './KeepingScreen.module.css';

type Step =
  | { at: 'begin' | 'reading' | 'too-large' | 'unreadable' }
  | { at: 'locked'; text: string }
  | { at: 'planned'; text: string; plan: ImportPlan; recovering: boolean }
  | { at: 'done'; result: TakenIn };

/** A file from another phone, or an own backup: first what would happen, then the union. */
export function TakeIn({ words, place, zone }: { words: Words; place: Place; zone: string }) {
  const input = useRef<HTMLInputElement>(null);
  const [step, setStep] = useState<Step>({ at: 'begin' });
  const say = words.keeping.takeIn;

  const read = async (file: File | undefined) => {
    if (!file) return;
    if (file.size > MAX_FILE_CHARS) return setStep({ at: 'too-large' });
    setStep({ at: 'reading' });
    try {
      const text = await file.text();
      if (isSealed(text)) setStep({ at: 'locked', text });
      else setStep({ at: 'planned', text, plan: await planImport(text), recovering: false });
    } catch {
      setStep({ at: 'unreadable' });
    }
  };

  const unlock = async (sealed: string, passphrase: string) => {
    const opened = await unseal(sealed, passphrase);
    if (!opened.ok) return false;
    const { text } = opened;
    setStep({ at: 'planned', text, plan: await planImport(text), recovering: false });
    return true;
  };

  return (
    <section className={styles.panel} aria-labelledby="take-in">
      <h2 id="take-in">{say.title}</h2>
      <p>{say.text}</p>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={say.choose}
        onChange={(event) => {
          void read(event.target.files?.[0]);
          event.target.value = '';
        }}
      />
      <div aria-live="polite" className={styles.panel}>
        {step.at === 'reading' && <p>{say.reading}</p>}
        {step.at === 'too-large' && <Notice kind="error">{say.tooLarge}</Notice>}
        {step.at === 'unreadable' && <Notice kind="error">{say.unreadable}</Notice>}
        {step.at === 'done' && step.result.ok && <Notice kind="saved">{say.done(step.result.added)}</Notice>}
        {step.at === 'done' && !step.result.ok && (
          <Notice kind="error">{words.app.problem[step.result.problem.code]}</Notice>
        )}
        {step.at === 'locked' && (
          <Passphrase words={say.unlock} onPassphrase={(passphrase) => unlock(step.text, passphrase)} />
        )}
        {step.at === 'planned' && (
          <Plan
            plan={step.plan}
            recovering={step.recovering}
            place={place}
            zone={zone}
            words={words}
            onTake={async () => setStep({ at: 'done', result: await takeIn(step.plan) })}
            onRecover={async () =>
              setStep({ ...step, plan: await planRecovery(step.text), recovering: true })
            }
          />
        )}
      </div>
      <div className={styles.acts}>
        <Button onPress={() => input.current?.click()} disabled={step.at === 'reading'}>
          {step.at === 'begin' ? say.choose : say.another}
        </Button>
      </div>
    </section>
  );
}

function Plan({
  plan,
  recovering,
  place,
  zone,
  words,
  onTake,
  onRecover,
}: {
  plan: ImportPlan;
  recovering: boolean;
  place: Place;
  zone: string;
  words: Words;
  onTake: () => Promise<void>;
  onRecover: () => Promise<void>;
}) {
  const [taking, setTaking] = useState(false);
  const say = words.keeping.takeIn;
  const view = importView(plan, { recovering, place, zone, words });
  return (
    <>
      <h3>{recovering ? say.recoverTitle : say.planTitle}</h3>
      <p>{view.from}</p>
      <dl className={styles.counts}>
        {view.counts.map(({ label, value, note }) => (
          <div key={label} className={styles.count}>
            <dt>
              {label}
              {note && <span className={styles.note}>{note}</span>}
            </dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {view.faults && <Notice kind="caution">{view.faults}</Notice>}
      {view.refused.length > 0 && (
        <ul className={styles.refused}>
          {view.refused.map((text) => (
            <li key={text}>{text}</li>
          ))}
          {view.more && <li>{view.more}</li>}
        </ul>
      )}
      {view.nothing && <Notice kind={view.canRecover ? 'error' : 'caution'}>{view.nothing}</Notice>}
      {view.canRecover && (
        <>
          <p>{say.recoverText}</p>
          <div className={styles.acts}>
            <Button onPress={() => void onRecover()}>{say.recover}</Button>
          </div>
        </>
      )}
      {view.act && (
        <div className={styles.acts}>
          <Button
            kind="primary"
            disabled={taking}
            onPress={() => {
              setTaking(true);
              void onTake();
            }}
          >
            {view.act}
          </Button>
        </div>
      )}
    </>
  );
}
