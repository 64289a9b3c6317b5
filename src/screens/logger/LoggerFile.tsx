import { useMemo, useRef, useState } from 'react';
import type { LoggerChoices, LoggerRead } from '#files/logger-csv.ts';
import { MOST_LOGGER_BYTES } from '#files/logger-text.ts';
import { type PickedFile, readPicked } from '#files/pick-file.ts';
import { readLoggerAside } from '#files/read-logger.ts';
import type { Meter } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Fact } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import type { Words } from '#words/en.ts';
import styles from './LoggerFile.module.css';
import { PasteTable } from './PasteTable.tsx';
import { questionViews } from './questions-view.ts';
import type { Found, Picked, Run } from './run-view.ts';

type PickedOne = Extract<PickedFile, { ok: true }>;
type At =
  | { state: 'empty' }
  | { state: 'reading'; doneFraction: number }
  | { state: 'answered'; answer: LoggerRead };

/** A logger's file: read as a dry run, asked about where it is unclear, and kept only when the maker says so. */
export function LoggerFile({
  title,
  line,
  back,
  none,
  meters,
  runOf,
  saved,
  words,
  onSave,
}: {
  title: string;
  line: string;
  back: { href: string; label: string };
  /** Said where the file was read and nothing in it is to be kept. */
  none: string;
  meters: readonly Meter[];
  /** Stable between drawings: a file may have 250,000 rows. */
  runOf: (found: Found, picked: Picked) => Run | null;
  saved: { state: SavedState; text: string } | null;
  words: Words;
  onSave: (facts: readonly Fact[]) => void;
}) {
  const say = words.logger;
  const [file, setFile] = useState<PickedOne | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [choices, setChoices] = useState<LoggerChoices>({});
  const [at, setAt] = useState<At>({ state: 'empty' });
  const [instrument, setInstrument] = useState<SubjectId | 'none'>('none');
  const stop = useRef<AbortController | null>(null);

  const read = async (picked: PickedOne, with_: LoggerChoices) => {
    stop.current?.abort();
    const control = new AbortController();
    stop.current = control;
    setAt({ state: 'reading', doneFraction: 0 });
    const answer = await readLoggerAside({
      bytes: picked.bytes,
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      choices: with_,
      signal: control.signal,
      onProgress: (doneFraction) => {
        if (stop.current === control) setAt({ state: 'reading', doneFraction });
      },
    });
    if (stop.current === control) setAt({ state: 'answered', answer });
  };
  const answerWith = (more: LoggerChoices) => {
    if (file === null) return;
    const next = { ...choices, ...more };
    setChoices(next);
    void read(file, next);
  };
  const take = async (picked: PickedFile) => {
    setChoices({});
    setProblem(picked.ok ? null : (say.why[picked.code] ?? picked.code));
    setFile(picked.ok ? picked : null);
    if (picked.ok) await read(picked, {});
    else setAt({ state: 'empty' });
  };
  const pick = async (chosen: File | undefined) => {
    if (chosen) await take(await readPicked(chosen, { mostBytes: MOST_LOGGER_BYTES }));
  };
  const answer = at.state === 'answered' ? at.answer : null;
  const isRead = answer !== null && answer.state === 'read';
  const run = useMemo(
    () =>
      answer?.state === 'read' && file
        ? runOf(answer, { name: file.name, instrument: instrument === 'none' ? null : instrument })
        : null,
    [answer, file, instrument, runOf],
  );

  return (
    <Page
      title={title}
      line={line}
      back={back}
      acts={
        run ? (
          <Button kind="primary" disabled={saved?.state === 'saving'} onPress={() => onSave(run.facts)}>
            {say.save(run.count)}
          </Button>
        ) : at.state === 'reading' ? (
          <Button onPress={() => stop.current?.abort()}>{say.cancel}</Button>
        ) : undefined
      }
    >
      <p>{say.how}</p>
      <input
        className={styles.file}
        type="file"
        accept=".csv,.txt,.tsv,text/csv,text/plain"
        aria-label={say.pick}
        onChange={(event) => void pick(event.target.files?.[0])}
      />
      <PasteTable words={words} onPicked={(picked) => void take(picked)} />
      {meters.length > 0 && (
        <Choice<SubjectId | 'none'>
          label={say.thermometer}
          options={[
            { value: 'none', label: say.notInKit },
            ...meters.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          value={instrument}
          onValue={setInstrument}
        />
      )}
      {problem && <Notice kind="error">{problem}</Notice>}
      {at.state === 'reading' && (
        <p role="status">{say.reading(String(Math.floor(100 * at.doneFraction)))}</p>
      )}
      {answer?.state === 'cancelled' && <p role="status">{say.cancelled}</p>}
      {answer?.state === 'asked' && (
        <>
          <p>{say.asked}</p>
          {questionViews(answer, words).map(({ key, text, options, choose }) => (
            <Choice
              key={key}
              label={text}
              options={options}
              value={null}
              onValue={(value) => answerWith(choose(value))}
            />
          ))}
        </>
      )}
      {answer?.state === 'refused' && (
        <Refused answer={answer} words={words} onLeaveOut={answerWith} choices={choices} />
      )}
      {isRead && !run && <Notice kind="caution">{none}</Notice>}
      {run && (
        <dl className={styles.found}>
          {run.rows.map(({ label, value }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
      )}
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Page>
  );
}

function Refused({
  answer,
  words,
  choices,
  onLeaveOut,
}: {
  answer: Extract<LoggerRead, { state: 'refused' }>;
  words: Words;
  choices: LoggerChoices;
  onLeaveOut: (more: LoggerChoices) => void;
}) {
  const say = words.logger;
  const { refusal } = answer;
  const { row } = refusal;
  const text = 'text' in refusal ? refusal.text : '';
  return (
    <Notice
      kind="error"
      title={say.refused}
      act={
        row !== null && (
          <Button kind="quiet" onPress={() => onLeaveOut({ leaveOut: [...(choices.leaveOut ?? []), row] })}>
            {say.leaveOut}
          </Button>
        )
      }
    >
      {row !== null && <p>{say.row(row, text)}</p>}
      <p>{say.why[refusal.code] ?? refusal.code}</p>
    </Notice>
  );
}
