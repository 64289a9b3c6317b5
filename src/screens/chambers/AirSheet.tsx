import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import type { Meter, Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';
import { airQuestion, readAir } from './air-input.ts';
import styles from './ChamberScreen.module.css';

const NONE = 'none';

/** Reads the air, or says what the controller is set to: the same two numbers. What is unlikely is asked about once. */
export function AirSheet({
  what,
  before,
  meters,
  place,
  words,
  nowMs,
  saved,
  onSave,
  onClose,
}: {
  what: 'read' | 'set';
  /** The last reading, to compare with. */
  before: { readonly airC: number; readonly atMs: number; readonly text: string } | null;
  meters: readonly Meter[];
  place: Place;
  words: Words;
  nowMs: number;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: BodyOf<'air-read'>, atMs: number | null) => void;
  onClose: () => void;
}) {
  const [temp, setTemp] = useState('');
  const [rh, setRh] = useState('');
  const [kept, setKept] = useState({ low: '', high: '', lowRh: '', highRh: '' });
  const [when, setWhen] = useState<string | null>(null);
  const [instrument, setInstrument] = useState<string>(NONE);
  const [shown, setShown] = useState(false);
  const [question, setQuestion] = useState<string | null>(null);
  const say = words.chambers.one;
  const degree = place.temperature === 'C' ? '°C' : '°F';
  const read = readAir({ temp, rh, ...kept }, place, words);
  const at = readWhen(when, nowMs);
  const problems = shown && !read.ok ? read.problems : {};
  const said = (problem: string | undefined) => (problem === undefined ? {} : { problem });

  const save = (isKept: boolean) => {
    setShown(true);
    if (!read.ok || !at.ok) return;
    const asked = airQuestion(read.body, what === 'read' ? before : null, { place, nowMs, words });
    if (asked && !isKept) {
      setQuestion(asked);
      return;
    }
    setQuestion(null);
    const meter = meters.find(({ id }) => id === instrument)?.id;
    onSave(
      {
        ...read.body,
        ...(meter ? { instrument: meter satisfies SubjectId } : {}),
        ...(asked ? { kept: ['airC'] } : {}),
      },
      at.atMs,
    );
  };

  return (
    <Sheet
      open
      onClose={onClose}
      title={what === 'read' ? say.readTitle : say.setTitle}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" onPress={() => save(false)} disabled={saved?.state === 'saving'}>
          {say.save}
        </Button>
      }
    >
      {what === 'set' && <p>{say.setHint}</p>}
      <NumberField
        label={say.temperatureLabel}
        text={temp}
        onText={setTemp}
        unit={degree}
        signLabel={words.fields.keyboard.sign}
        {...(before ? { previous: before.text } : {})}
        {...said(problems.temp)}
      />
      <NumberField
        label={say.humidityLabel}
        hint={say.humidityHint}
        text={rh}
        onText={setRh}
        unit="%"
        {...said(problems.rh)}
      />
      {what === 'read' && (
        <details>
          <summary className={styles.summary}>{say.extremes.title}</summary>
          <div className={styles.section}>
            <p className={styles.caution}>{say.extremes.hint}</p>
            {(['low', 'high', 'lowRh', 'highRh'] as const).map((name) => (
              <NumberField
                key={name}
                label={say.extremes[name]}
                text={kept[name]}
                onText={(text) => setKept({ ...kept, [name]: text })}
                unit={name === 'low' || name === 'high' ? degree : '%'}
                {...(name === 'low' ? { signLabel: words.fields.keyboard.sign } : {})}
                {...said(problems[name])}
              />
            ))}
          </div>
        </details>
      )}
      {what === 'read' && meters.length > 0 && (
        <Choice
          label={say.instrument}
          options={[
            ...meters.map(({ id, name }) => ({ value: id as string, label: name })),
            { value: NONE, label: say.noInstrument },
          ]}
          value={instrument}
          onValue={setInstrument}
        />
      )}
      <WhenField
        text={when}
        onText={setWhen}
        nowMs={nowMs}
        words={words.fields.when}
        {...(shown && !at.ok ? { problem: words.fields.whenProblem[at.problem] } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
      {question && (
        <Ask
          question={question}
          changeLabel={words.app.change}
          keepLabel={words.app.keep}
          onChange={() => setQuestion(null)}
          onKeep={() => save(true)}
        />
      )}
    </Sheet>
  );
}
