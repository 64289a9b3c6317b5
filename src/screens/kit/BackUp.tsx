import { useState } from 'react';
import { handDown, handOver, type OutgoingFile } from '#files/hand-over.ts';
import { canWriteToPlace, writeToPlace } from '#files/write-to-place.ts';
import type { Place } from '#record/place.ts';
import { PLACE } from '#record/subject.ts';
import { type Exported, exportLog } from '#store/backup.ts';
import { BUILD } from '#store/build.ts';
import { seal, unseal } from '#store/sealed.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Passphrase } from '#ui/Passphrase.tsx';
import { localText } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';
import styles from './KeepingScreen.module.css';
import { sizeText } from './keeping-view.ts';

type Handed = 'shared' | 'written' | 'downloaded';
/** `text` is what the file holds, locked or not. */
type Ready = { exported: Exported; file: OutgoingFile; text: string; bytes: number; locked: boolean };
type Step =
  | { at: 'begin' | 'making' | 'failed' }
  | ({ at: 'ready'; again: boolean } & Ready)
  | { at: 'handed'; handed: Handed; noted: boolean };

/** To the share sheet, or where there turns out to be none, to the downloads. Null: it was not handed over. */
async function share({ file }: Ready): Promise<Handed | null> {
  const handed = await handOver(file);
  return handed === 'shared' ? 'shared' : handed === 'download-begun' ? 'downloaded' : null;
}

async function keepAsFile({ file, text }: Ready): Promise<Handed | null> {
  if (canWriteToPlace())
    return (await writeToPlace({ name: file.name, text })) === 'written' ? 'written' : null;
  return handDown(file) === 'download-begun' ? 'downloaded' : null;
}

function canShare({ name, mime }: OutgoingFile): boolean {
  return navigator.canShare?.({ files: [new File([], name, { type: mime })] }) ?? false;
}

/** Writes the file, reads it back, and hands it over. It counts as a backup only once it was handed over. */
export function BackUp({ words, place, nowMs }: { words: Words; place: Place; nowMs: number }) {
  const { save } = useAppend(place.initials);
  const [step, setStep] = useState<Step>({ at: 'begin' });
  const say = words.keeping.backUp;

  const make = async () => {
    setStep({ at: 'making' });
    try {
      const exported = await exportLog(BUILD);
      const name = say.fileName(localText(nowMs).replace('T', '-').replace(':', ''));
      const { text } = exported;
      const file = { name, mime: 'text/plain', content: text };
      setStep({
        at: 'ready',
        exported,
        file,
        text,
        bytes: new Blob([text]).size,
        locked: false,
        again: false,
      });
    } catch {
      setStep({ at: 'failed' });
    }
  };
  const lock = async (passphrase: string) => {
    if (step.at !== 'ready') return false;
    try {
      const text = await seal(step.exported.text, passphrase);
      const back = await unseal(text, passphrase);
      if (!back.ok || back.text !== step.exported.text) return false;
      const file = { ...step.file, name: say.sealedName(step.file.name), content: text };
      setStep({ ...step, file, text, bytes: new Blob([text]).size, locked: true });
      return true;
    } catch {
      return false;
    }
  };
  const hand = async (by: (ready: Ready) => Promise<Handed | null>) => {
    if (step.at !== 'ready') return;
    const handed = await by(step);
    if (handed === null) {
      setStep({ ...step, again: true });
      return;
    }
    const { entries, hash } = step.exported;
    const { ok } = await save([
      { kind: 'backed-up', subject: PLACE, body: { entries, bytes: step.bytes, hash, place: handed } },
    ]);
    setStep({ at: 'handed', handed, noted: ok });
  };

  if (step.at === 'ready') {
    const { exported, file, bytes, again, locked } = step;
    return (
      <section className={styles.panel} aria-live="polite">
        <h2>{say.ready}</h2>
        <p>{say.readBack(exported.entries, sizeText(bytes, place, words))}</p>
        {exported.left.length > 0 && <Notice kind="error">{say.left(exported.left.length)}</Notice>}
        <p>{say.where}</p>
        <p className={styles.sum}>{say.sum(exported.hash)}</p>
        {locked && <Notice kind="saved">{say.sealed}</Notice>}
        {again && <Notice kind="caution">{say.notHanded}</Notice>}
        <div className={styles.acts}>
          {canShare(file) && (
            <Button kind="primary" onPress={() => void hand(share)}>
              {say.share}
            </Button>
          )}
          <Button kind={canShare(file) ? 'second' : 'primary'} onPress={() => void hand(keepAsFile)}>
            {say.save}
          </Button>
        </div>
        {!locked && <Passphrase words={say.lock} onPassphrase={lock} />}
      </section>
    );
  }
  return (
    <section className={styles.panel} aria-live="polite">
      {step.at === 'handed' && <Notice kind="saved">{say.done[step.handed]}</Notice>}
      {step.at === 'handed' && !step.noted && <Notice kind="error">{say.notNoted}</Notice>}
      {step.at === 'failed' && <Notice kind="error">{say.failed}</Notice>}
      <div className={styles.acts}>
        <Button kind="primary" onPress={() => void make()} disabled={step.at === 'making'}>
          {step.at === 'making' ? say.making : say.act}
        </Button>
      </div>
    </section>
  );
}
