import { Suspense, useRef, useState } from 'react';
import { type ImportPlan, planImport, planRecovery, takeIn } from '#store/backup.ts';
import { beginAnew, beginFromCopy } from '#store/open.ts';
import { isSealed, unseal } from '#store/sealed.ts';
import type { StartState } from '#store/state.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { Passphrase } from '#ui/Passphrase.tsx';
import type { FirstWords } from '#words/en/first.ts';
import { CopyBackup } from './CopyBackup.tsx';
import type { Language } from './language.ts';

type Stopped = Exclude<StartState, { code: 'ready' | 'checking' }>;

/** Why the book does not open, and what to do. A lost book is never shown as a fresh one. */
export function StartScreen({ state, language }: { state: Stopped; language: Language }) {
  const words = language.first;
  if (state.code === 'lost') return <Lost missing={state.missing} words={words} />;
  const { newerOpen, blocked, cannotOpen } = words.start;
  const { title, text, act } =
    state.code === 'newer-open' ? newerOpen : state.code === 'blocked' ? blocked : cannotOpen;
  const full = state.code === 'cannot-open' && state.problem.code === 'full';
  return (
    <Page
      title={title}
      acts={
        <>
          {state.code === 'cannot-open' && !full && (
            <Button onPress={beginFromCopy}>{cannotOpen.fromCopy}</Button>
          )}
          <Button kind="primary" onPress={() => window.location.reload()}>
            {act}
          </Button>
        </>
      }
    >
      <p>{full ? cannotOpen.full : text}</p>
      {state.code === 'cannot-open' && !full && <p>{cannotOpen.copyText}</p>}
      {state.code === 'cannot-open' && (
        <Suspense>
          <CopyBackup language={language} />
        </Suspense>
      )}
    </Page>
  );
}

function Lost({ missing, words }: { missing: number; words: FirstWords }) {
  const { lost } = words.start;
  const input = useRef<HTMLInputElement>(null);
  const [plan, setPlan] = useState<ImportPlan | null>(null);
  const [locked, setLocked] = useState<string | null>(null);
  const [damage, setDamage] = useState<string | null>(null);
  const [failed, setFailed] = useState(false);
  const [sure, setSure] = useState(false);

  const read = async (file: File | undefined) => {
    if (!file) return;
    const text = await file.text();
    setLocked(isSealed(text) ? text : null);
    setPlan(null);
    if (!isSealed(text)) await planOf(text);
  };
  const unlock = async (sealed: string, passphrase: string) => {
    const opened = await unseal(sealed, passphrase);
    if (!opened.ok) return false;
    setLocked(null);
    await planOf(opened.text);
    return true;
  };
  const planOf = async (text: string) => {
    const whole = await planImport(text);
    const first = whole.problems[0];
    setDamage(first ? lost.refused(first.line, words.backupFile.problem(first.code)) : null);
    setPlan(whole.ok ? whole : await planRecovery(text));
  };

  return (
    <Page title={lost.title}>
      <p>{lost.text(missing)}</p>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={lost.choose}
        onChange={(event) => {
          void read(event.target.files?.[0]);
          event.target.value = '';
        }}
      />
      <Button kind={plan?.ok ? 'second' : 'primary'} onPress={() => input.current?.click()}>
        {lost.choose}
      </Button>
      {locked !== null && (
        <Passphrase
          words={words.backupFile.unlock}
          onPassphrase={(passphrase) => unlock(locked, passphrase)}
        />
      )}
      {damage && <Notice kind="error">{damage}</Notice>}
      {plan &&
        (plan.ok ? (
          <>
            <p>{lost.chosen(plan.fresh.length, plan.lines)}</p>
            <Button kind="primary" onPress={async () => setFailed(!(await takeIn(plan)).ok)}>
              {lost.takeIn}
            </Button>
          </>
        ) : (
          <Notice kind="error">{lost.other}</Notice>
        ))}
      {failed && <Notice kind="error">{lost.failed}</Notice>}
      <Button kind="quiet" onPress={() => (sure ? void beginAnew() : setSure(true))}>
        {sure ? lost.anewSure : lost.anew}
      </Button>
    </Page>
  );
}
