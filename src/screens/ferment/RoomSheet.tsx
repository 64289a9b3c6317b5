import { useState } from 'react';
import type { Meter } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Fact } from '#store/use-append.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import { roomText } from './ferment-view.ts';
import { degreeSign, type SheetProps, taken } from './sheet.ts';

type Body = Extract<Fact, { kind: 'room-read' }>['body'];

/** Nobody ferments below this or above it: asked about once. */
const COLD_C = 5;
const HOT_C = 45;

export function RoomSheet({
  place,
  words,
  nowMs,
  saved,
  thermometers,
  last,
  onSave,
  onClose,
}: SheetProps<Body> & {
  thermometers: readonly Meter[];
  /** What was read before: the same instruments are taken again. */
  last: Body | undefined;
}) {
  const say = words.fermentAhead.room;
  const hygrometers = thermometers.filter(({ what }) => what === 'hygrometer');
  const [hygrometer, setHygrometer] = useState<SubjectId | null>(
    hygrometers.length === 1 ? (hygrometers[0]?.id ?? null) : taken(last?.hygrometer, hygrometers),
  );
  const [thermometer, setThermometer] = useState<SubjectId | null>(
    thermometers.length === 1 ? (thermometers[0]?.id ?? null) : taken(last?.thermometer, thermometers),
  );
  const [doubt, setDoubt] = useState<'believed' | 'doubtful'>('believed');
  const { room } = words.ferment;
  const { fields } = words;
  const degrees = useQuantity({ unit: place.temperature, decimal: place.decimal, least: -40, most: 80 });
  const humidity = useQuantity({ unit: '%', decimal: place.decimal, least: 0, most: 100 });
  const [when, setWhen] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const [question, setQuestion] = useState<string | null>(null);
  const at = readWhen(when, nowMs);
  const sign = degreeSign(place);

  const save = (kept: boolean) => {
    setShown(true);
    const { read } = degrees;
    if (!read.ok || (!humidity.empty && !humidity.read.ok) || !at.ok) return;
    const unlikely = read.value < COLD_C || read.value > HOT_C;
    if (unlikely && !kept) {
      setQuestion(room.unlikely(roomText(read.value, place)));
      return;
    }
    setQuestion(null);
    const rhPct = humidity.read.ok ? humidity.read : null;
    onSave(
      {
        roomC: read.value,
        ...(rhPct ? { rhPct: rhPct.value } : {}),
        ...(doubt === 'doubtful' ? { doubted: true } : {}),
        ...(thermometer ? { thermometer } : {}),
        ...(rhPct && hygrometer ? { hygrometer } : {}),
        typed: { roomC: read.typed, ...(rhPct ? { rhPct: rhPct.typed } : {}) },
        ...(unlikely ? { kept: ['roomC'] } : {}),
      },
      at.atMs,
    );
  };

  return (
    <Sheet
      open
      onClose={onClose}
      title={room.title}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" onPress={() => save(false)} disabled={saved?.state === 'saving'}>
          {room.save}
        </Button>
      }
    >
      <NumberField
        label={room.value}
        text={degrees.text}
        onText={degrees.onText}
        unit={sign}
        signLabel={fields.keyboard.sign}
        {...(shown && !degrees.read.ok
          ? {
              problem: fields.problem(degrees.read.problem, {
                least: roomText(-40, place),
                most: roomText(80, place),
              }),
            }
          : {})}
      />
      <NumberField
        label={room.humidity}
        hint={room.humidityHint}
        text={humidity.text}
        onText={humidity.onText}
        unit="%"
        {...(shown && !humidity.empty && !humidity.read.ok
          ? { problem: fields.problem(humidity.read.problem, { least: '0 %', most: '100 %' }) }
          : {})}
      />
      {thermometers.length > 1 && (
        <Choice
          label={say.thermometer}
          options={thermometers.map(({ id, name }) => ({ value: id, label: name }))}
          value={thermometer}
          onValue={setThermometer}
        />
      )}
      {hygrometers.length > 1 && !humidity.empty && (
        <Choice
          label={say.hygrometer}
          options={hygrometers.map(({ id, name }) => ({ value: id, label: name }))}
          value={hygrometer}
          onValue={setHygrometer}
        />
      )}
      <Choice
        label={say.doubt}
        options={[
          { value: 'believed', label: words.ferment.ph.believed },
          { value: 'doubtful', label: words.ferment.ph.doubtful },
        ]}
        value={doubt}
        onValue={setDoubt}
      />
      <WhenField
        text={when}
        onText={setWhen}
        nowMs={nowMs}
        words={fields.when}
        {...(shown && !at.ok ? { problem: fields.whenProblem[at.problem] } : {})}
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
