import { useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { BUILD } from '#store/build.ts';
import { useNowMs } from '#store/clock.ts';
import { useKit, useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { useDoubted } from '#store/use-doubted.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { TextField } from '#ui/TextField.tsx';
import { VerdictMark } from '#ui/VerdictMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './ReleaseScreen.module.css';
import { releaseView } from './release-view.ts';

const MINUTE_MS = 60_000;
const DECISIONS = ['release', 'hold', 'reject'] as const;

/** The decision on a batch, kept with what was known on that day: verdicts, gaps, rule set, build. */
export function ReleaseScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const kit = useKit();
  const nowMs = useNowMs(MINUTE_MS);
  const doubted = useDoubted(nowMs);
  const { saving, save } = useAppend(place.initials);
  const [decision, setDecision] = useState<(typeof DECISIONS)[number] | null>(null);
  const [note, setNote] = useState('');
  const [shown, setShown] = useState(false);
  if (entries === undefined || kit === undefined || doubted === undefined)
    return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const view = releaseView({ batch, entries, doubted, scales: kit.scales, nowMs, words });
  const { release } = words;
  const unsaid = view.needsReason && note.trim() === '';
  const mark = words.app.saving(saving);

  const decide = async () => {
    setShown(true);
    if (decision === null || unsaid) return;
    const result = await save([
      {
        kind: 'decided',
        subject,
        body: {
          decision,
          verdicts: view.findings.map(({ rule, verdict, value, limit }) => ({
            rule,
            verdict,
            value,
            limit: limit?.value ?? null,
            unit: limit?.unit ?? '',
          })),
          ruleSet: batch.opened.body.ruleSet,
          build: BUILD,
          gaps: view.gaps.map(({ key }) => key),
          ...(note.trim() ? { note: note.trim() } : {}),
        },
      },
    ]);
    if (!result.ok) return;
    setDecision(null);
    setNote('');
    setShown(false);
  };

  return (
    <Page
      title={release.title}
      line={view.line}
      back={{ href: `#/batches/${id}`, label: words.app.back }}
      sentence={view.sentence}
      acts={
        <Button kind="primary" onPress={decide} disabled={saving.state === 'saving'}>
          {release.save}
        </Button>
      }
    >
      {mark && <SavedMark {...mark} />}
      <section className={styles.part}>
        <h2>{release.rules}</h2>
        {view.verdicts.map(({ key, ...verdict }) => (
          <VerdictMark key={key} {...verdict} />
        ))}
      </section>
      <section className={styles.part}>
        <h2>{release.gaps}</h2>
        {view.gaps.length === 0 ? (
          <p>{release.noGaps}</p>
        ) : (
          <List label={release.gaps}>
            {view.gaps.map(({ key, text }) => (
              <Row key={key} title={text} />
            ))}
          </List>
        )}
      </section>
      <Choice
        label={release.decision}
        options={DECISIONS.map((value) => ({ value, label: release.decisions[value] }))}
        value={decision}
        onValue={setDecision}
        {...(shown && decision === null ? { problem: words.fields.choose } : {})}
      />
      <TextField
        label={release.note}
        text={note}
        onText={setNote}
        maxLength={2000}
        long
        {...(shown && unsaid ? { problem: release.noteNeeded } : {})}
      />
      <Notice kind="caution">{release.caution}</Notice>
    </Page>
  );
}
