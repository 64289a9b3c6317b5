import { useState } from 'react';
import type { EntryOf } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import { PLACE, type SubjectId } from '#record/subject.ts';
import { newSubject } from '#store/append.ts';
import { now } from '#store/clock.ts';
import { type Fact, useAppend } from '#store/use-append.ts';
import type { Kept } from '#store/use-draft.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import { AgainstNotice } from './AgainstNotice.tsx';
import { MeatFields } from './MeatFields.tsx';
import { readMeat } from './meat-input.ts';
import styles from './OpenBatchScreen.module.css';
import {
  guardQuestions,
  type OpenDraft,
  openBatchView,
  ruleSetOptions,
  suggestedLot,
} from './open-batch-view.ts';
import { PlanFields } from './PlanFields.tsx';
import { fieldsOf, firstPlan, planQuestions, readPlan } from './plan-input.ts';

/** The page on which a batch is opened from one version of a formula. */
export function OpenBatch({
  words,
  place,
  id,
  version,
  number,
  kept,
  lots,
}: {
  words: Words;
  place: Place;
  id: string;
  version: EntryOf<'formula-saved'>;
  number: number;
  kept: Kept<OpenDraft>;
  lots: readonly string[];
}) {
  const { formula } = version.body;
  const [first] = useState((): OpenDraft => {
    const { nowMs, zone } = now();
    const plan = firstPlan(formula, place, words);
    return {
      lot: suggestedLot(nowMs, zone, lots),
      plan,
      ruleSet: null,
      ready: { meat: '', trays: '' },
      note: '',
    };
  });
  const draft = kept.value ?? first;
  const [tried, setTried] = useState(false);
  const [keptCodes, setKeptCodes] = useState<readonly string[]>([]);
  const [asking, setAsking] = useState(false);
  const { saving, save } = useAppend(place.initials);
  const say = words.openBatch;
  const read = readPlan({ fields: fieldsOf(formula), texts: draft.plan, place, words });
  const ready = readMeat(draft.ready, place, words);
  const view = openBatchView({ version, number, draft, read, lots, tried, place, words });
  const mark = words.app.saving(saving);
  const questions = read.ok
    ? [...guardQuestions(view.against, words), ...planQuestions(read.plan, place, words)]
    : [];
  const next = (kept: readonly string[]) => questions.find(({ code }) => !kept.includes(code)) ?? null;
  const question = asking ? next(keptCodes) : null;

  const open = async (keptNow: readonly string[]) => {
    const ruleSet = place.ruleSet ?? draft.ruleSet;
    if (!read.ok || !ready.ok || ruleSet === null || view.lotProblem !== null) return;
    const subject: SubjectId = newSubject('batch');
    const facts: Fact[] = [
      {
        kind: 'batch-opened',
        subject,
        refs: [version.subject],
        body: {
          lot: draft.lot.trim(),
          formula,
          from: { formula: version.subject, entry: version.id },
          ruleSet,
          plan: read.plan,
          ...ready.body,
          typed: { ...read.typed, ...ready.typed },
          ...(draft.note.trim() === '' ? {} : { note: draft.note.trim() }),
          ...(keptNow.length > 0 ? { kept: [...keptNow] } : {}),
        },
      },
    ];
    if (place.ruleSet === null) facts.unshift({ kind: 'rule-set-chosen', subject: PLACE, body: { ruleSet } });
    const { ok } = await save(facts);
    if (!ok) return;
    await kept.drop();
    window.location.hash = `#/batches/${subject.slice('batch:'.length)}/weigh-out`;
  };
  const hindered =
    !read.ok ||
    !ready.ok ||
    view.lotProblem !== null ||
    view.against === null ||
    view.against.stops.length > 0;
  const tryOpen = () => {
    setTried(true);
    if (hindered) return;
    setAsking(true);
    if (next(keptCodes) === null) void open(keptCodes);
  };

  return (
    <Page
      title={say.title}
      line={formula.name}
      back={{ href: `#/formulas/${id}`, label: words.app.back }}
      sentence={view.sentence}
      acts={
        <Button kind="primary" disabled={saving.state === 'saving'} onPress={tryOpen}>
          {say.save}
        </Button>
      }
      actsNote={tried && hindered ? say.lookAbove : undefined}
    >
      <AgainstNotice against={view.against} href={`#/formulas/${id}`} words={words} />
      <TextField
        label={say.lot}
        hint={say.lotHint}
        capitals="characters"
        maxLength={40}
        text={draft.lot}
        onText={(lot) => kept.set({ ...draft, lot })}
        {...(view.lotProblem ? { problem: view.lotProblem } : {})}
      />
      {view.ruleSet ? (
        <div className={styles.ruleSet}>
          <Sentence tokens={view.ruleSet} small />
          <p className={styles.small}>{view.compared}</p>
        </div>
      ) : (
        <Choice
          label={say.ruleSet}
          hint={say.ruleSetHint}
          options={ruleSetOptions(words)}
          value={draft.ruleSet}
          onValue={(ruleSet) => kept.set({ ...draft, ruleSet })}
          {...(view.ruleSetProblem ? { problem: view.ruleSetProblem } : {})}
        />
      )}
      <PlanFields
        groups={view.groups}
        line={view.planLine}
        onField={(field, text) => kept.set({ ...draft, plan: { ...draft.plan, [field]: text } })}
        words={words}
      />
      <MeatFields
        texts={draft.ready}
        read={ready}
        onTexts={(texts) => kept.set({ ...draft, ready: texts })}
        place={place}
        words={words}
      />
      <TextField
        label={say.note}
        long
        maxLength={2000}
        text={draft.note}
        onText={(note) => kept.set({ ...draft, note })}
      />
      {mark && <SavedMark state={mark.state} text={mark.text} />}
      {question && (
        <Ask
          key={question.code}
          question={question.text}
          changeLabel={question.about === 'plan' ? words.app.change : say.notYet}
          keepLabel={question.about === 'plan' ? words.app.keep : say.allTheSame}
          onChange={() => setAsking(false)}
          onKeep={() => {
            const keptNow = [...keptCodes, question.code];
            setKeptCodes(keptNow);
            if (next(keptNow) !== null) return;
            setAsking(false);
            void open(keptNow);
          }}
        />
      )}
    </Page>
  );
}
