import { useState } from 'react';
import { CHILL_MINUTES } from '#core/ferment/temperature-gate.ts';
import type { BenchStep } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import type { Fact } from '#store/use-append.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { type Quantity, useQuantity } from '#ui/use-quantity.ts';
import { VerdictMark } from '#ui/VerdictMark.tsx';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';
import { type GateField, gateViews, STEP_GATES } from './gate-view.ts';

type Body = Extract<Fact, { kind: BenchStep }>['body'];

/** Meat that is worked on for longer than this grows warm (common practice): a digit too many, and asked about once. */
const LONG_MINUTES = 240;

/** One bench step: what was measured, how long it took, when. Temperatures and minutes may stay empty. */
export function StepSheet({
  step,
  place,
  words,
  nowMs,
  saved,
  onSave,
  onChill,
  onClose,
}: {
  step: BenchStep;
  place: Place;
  words: Words;
  nowMs: number;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: Body, atMs: number | null) => void;
  /** A timer, before anything is written down of the step. */
  onChill: (minutes: number) => void;
  onClose: () => void;
}) {
  const { bench, fields } = words;
  const degrees = { unit: place.temperature, decimal: place.decimal, least: -30, most: 60 } as const;
  const temps: Record<GateField, Quantity> = {
    leanC: useQuantity(degrees),
    fatC: useQuantity(degrees),
    tempC: useQuantity(degrees),
  };
  const took = useQuantity({ unit: 'min', decimal: place.decimal, least: 0, most: 6000 });
  const [override, setOverride] = useState('');
  const [note, setNote] = useState('');
  const [when, setWhen] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const [asking, setAsking] = useState(false);
  const at = readWhen(when, nowMs);
  const measured = Object.keys(STEP_GATES[step]) as GateField[];
  const known = (field: GateField) => (temps[field].read.ok ? temps[field].read : null);
  const gates = gateViews({
    step,
    temps: Object.fromEntries(
      measured.flatMap((field) => (known(field) ? [[field, known(field)?.value]] : [])),
    ),
    place,
    words,
  });
  const stopped = gates.filter(({ light }) => light === 'stop');
  const sign = place.temperature === 'C' ? '°C' : '°F';
  const ends =
    place.temperature === 'C' ? { least: '−30 °C', most: '60 °C' } : { least: '−22 °F', most: '140 °F' };
  const problemOf = ({ empty, read }: Quantity, edges: { least: string; most: string }) =>
    shown && !empty && !read.ok ? { problem: fields.problem(read.problem, edges) } : {};

  const save = (kept: boolean) => {
    setShown(true);
    const broken = [...measured.map((field) => temps[field]), took].some(
      ({ empty, read }) => !empty && !read.ok,
    );
    if (broken || !at.ok || (stopped.length > 0 && override.trim() === '')) return;
    const values = measured.flatMap((field) => (known(field) ? [[field, known(field)?.value]] : []));
    const minutes = took.read.ok ? took.read : null;
    if (minutes && minutes.value > LONG_MINUTES && !kept) {
      setAsking(true);
      return;
    }
    setAsking(false);
    const sure = [...stopped.map(({ field }) => field), ...(kept ? ['minutes'] : [])];
    const typed = Object.fromEntries([
      ...measured.flatMap((field) => (known(field) ? [[field, known(field)?.typed]] : [])),
      ...(minutes ? [['minutes', minutes.typed]] : []),
    ]);
    onSave(
      {
        ...Object.fromEntries(values),
        ...(minutes ? { minutes: minutes.value } : {}),
        ...(stopped.length > 0 ? { override: override.trim() } : {}),
        ...(sure.length > 0 ? { kept: sure } : {}),
        ...(note.trim() ? { note: note.trim() } : {}),
        ...(Object.keys(typed).length > 0 ? { typed } : {}),
      },
      at.atMs,
    );
  };

  return (
    <Sheet
      open
      onClose={onClose}
      title={bench.step[step]}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" onPress={() => save(false)} disabled={saved?.state === 'saving'}>
          {bench.save}
        </Button>
      }
    >
      {measured.map((field) => {
        const gate = gates.find((each) => each.field === field);
        return (
          <div key={field}>
            <NumberField
              label={
                field === 'tempC'
                  ? bench.temperature[step === 'cleaned' ? 'ground' : step]
                  : bench.before[field]
              }
              hint={bench.optional}
              text={temps[field].text}
              onText={temps[field].onText}
              unit={sign}
              signLabel={fields.keyboard.sign}
              {...problemOf(temps[field], ends)}
            />
            {gate && <VerdictMark verdict={gate.shape} word={gate.text} />}
          </div>
        );
      })}
      {stopped.length > 0 && (
        <>
          <Notice
            kind="error"
            act={
              <Button onPress={() => onChill(CHILL_MINUTES)} disabled={saved?.state === 'saving'}>
                {bench.gate.timer(CHILL_MINUTES)}
              </Button>
            }
          >
            {bench.gate.chill}
          </Notice>
          <TextField
            label={bench.gate.override}
            hint={bench.gate.overrideHint}
            text={override}
            onText={setOverride}
            maxLength={400}
            {...(shown && override.trim() === '' ? { problem: bench.gate.overrideNeeded } : {})}
          />
        </>
      )}
      {measured.length > 0 && <p>{bench.gate.practice}</p>}
      {measured.length > 0 && (
        <NumberField
          label={bench.minutes}
          hint={bench.optional}
          text={took.text}
          onText={took.onText}
          unit="min"
          {...problemOf(took, { least: '0', most: '6000 min' })}
        />
      )}
      <TextField
        label={bench.note}
        hint={bench.optional}
        text={note}
        onText={setNote}
        maxLength={2000}
        long
      />
      <WhenField
        text={when}
        onText={setWhen}
        nowMs={nowMs}
        words={fields.when}
        {...(shown && !at.ok ? { problem: fields.whenProblem[at.problem] } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
      {asking && (
        <Ask
          question={bench.long(took.text)}
          changeLabel={words.app.change}
          keepLabel={words.app.keep}
          onChange={() => setAsking(false)}
          onKeep={() => save(true)}
        />
      )}
    </Sheet>
  );
}
