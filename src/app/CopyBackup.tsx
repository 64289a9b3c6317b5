import { use, useState } from 'react';
import { handOver, type OutgoingFile } from '#files/hand-over.ts';
import { exportCopy } from '#store/backup.ts';
import { BUILD } from '#store/build.ts';
import { now } from '#store/clock.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { localText } from '#ui/when-input.ts';
import type { Language } from './language.ts';

type Ready = { readonly file: OutgoingFile; readonly entries: number };
type Step =
  | { readonly at: 'begin' | 'reading' | 'none' }
  | ({ readonly at: 'ready' | 'handed' | 'failed' } & Ready);

/** The way out of a book that cannot be opened: a backup of all that its second copy holds. Nothing is written on this phone. */
export function CopyBackup({ language }: { language: Language }) {
  const say = use(language.all()).copyBackup;
  const [step, setStep] = useState<Step>({ at: 'begin' });
  const read = async () => {
    setStep({ at: 'reading' });
    const made = await exportCopy(BUILD);
    if (made === null) return setStep({ at: 'none' });
    const name = say.fileName(localText(now().nowMs).replace('T', '-').replace(':', ''));
    setStep({
      at: 'ready',
      entries: made.entries,
      file: { name, mime: 'text/plain', content: made.text },
    });
  };
  // From a press of its own: no browser opens its share sheet a while after one.
  const hand = async ({ file, entries }: Ready) => {
    const handed = await handOver(file);
    setStep({ at: handed === 'shared' || handed === 'download-begun' ? 'handed' : 'failed', file, entries });
  };
  return (
    <>
      <p>{say.text}</p>
      {'file' in step ? (
        <Button onPress={() => void hand(step)}>{say.hand(step.entries)}</Button>
      ) : (
        <Button onPress={() => void read()} disabled={step.at === 'reading'}>
          {say.read}
        </Button>
      )}
      {step.at === 'handed' && <Notice kind="saved">{say.handed}</Notice>}
      {(step.at === 'none' || step.at === 'failed') && <Notice kind="error">{say[step.at]}</Notice>}
    </>
  );
}
