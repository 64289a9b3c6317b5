import { useMemo, useRef, useState } from 'react';
import { type LoggerChoices, type LoggerRead, readLogger } from '#files/logger-csv.ts';
import { MOST_LOGGER_BYTES } from '#files/logger-text.ts';
import { type PickedFile, readPicked } from '#files/pick-file.ts';
import type { Batch } from '#record/batch.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Meter } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { Notice } from '#ui/Notice.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import styles from './LoggerSheet.module.css';
import { type DryRun, dryRun, questionViews } from './logger-view.ts';
import type { SheetProps } from './sheet.ts';

type Picked = Extract<PickedFile, { ok: true }>;
type At =
  | { state: 'empty' }
  | { state: 'reading'; doneFraction: number }
  | { state: 'answered'; answer: LoggerRead };

/** The room from a logger's file: read as a dry run, asked about where it is unclear, and kept only when the maker says so. */
export function LoggerSheet({
  place,
  words,
  nowMs,
  zone,
  saved,
  batch,
  thermometers,
  onSave,
  onClose,
}: Omit<SheetProps<never>, 'onSave'> & {
  zone: string;
  batch: Batch;
  thermometers: readonly Meter[];
  onSave: (bodies: readonly BodyOf<'room-logged'>[]) => void;
}) {
  const say = words.logger;
  const [file, setFile] = useState<Picked | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [choices, setChoices] = useState<LoggerChoices>({});
  const [at, setAt] = useState<At>({ state: 'empty' });
  const [thermometer, setThermometer] = useState<SubjectId | 'none'>('none');
  const stop = useRef<AbortController | null>(null);

  const read = async (picked: Picked, with_: LoggerChoices) => {
    stop.current?.abort();
    const control = new AbortController();
    stop.current = control;
    setAt({ state: 'reading', doneFraction: 0 });
    const answer = await readLogger({
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
  const pick = async (chosen: File | undefined) => {
    if (!chosen) return;
    const picked = await readPicked(chosen, { mostBytes: MOST_LOGGER_BYTES });
    setChoices({});
    setProblem(picked.ok ? null : (say.why[picked.code] ?? picked.code));
    setFile(picked.ok ? picked : null);
    if (picked.ok) await read(picked, {});
    else setAt({ state: 'empty' });
  };
  const answer = at.state === 'answered' ? at.answer : null;
  const isRead = answer !== null && answer.state === 'read';
  // Packed once for a file, not at every drawing: it may have 43 200 rows.
  const [openedMs] = useState(nowMs);
  const run: DryRun | null = useMemo(
    () =>
      answer?.state === 'read' && file
        ? dryRun(answer, {
            batch,
            name: file.name,
            thermometer: thermometer === 'none' ? null : thermometer,
            nowMs: openedMs,
            zone,
            place,
            words,
          })
        : null,
    [answer, file, batch, thermometer, openedMs, zone, place, words],
  );

  return (
    <Sheet
      open
      onClose={() => {
        stop.current?.abort();
        onClose();
      }}
      title={say.title}
      closeLabel={words.app.close}
      acts={
        run ? (
          <Button kind="primary" disabled={saved?.state === 'saving'} onPress={() => onSave(run.bodies)}>
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
      {thermometers.length > 0 && (
        <Choice<SubjectId | 'none'>
          label={say.thermometer}
          options={[
            { value: 'none', label: say.notInKit },
            ...thermometers.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          value={thermometer}
          onValue={setThermometer}
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
      {isRead && !run && <Notice kind="caution">{say.found.none}</Notice>}
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
    </Sheet>
  );
}

function Refused({
  answer,
  words,
  choices,
  onLeaveOut,
}: {
  answer: Extract<LoggerRead, { state: 'refused' }>;
  words: SheetProps<never>['words'];
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
