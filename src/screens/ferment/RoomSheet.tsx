import { useState } from 'react';
import type { Fact } from '#store/use-append.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import { roomText } from './ferment-view.ts';
import { degreeSign, type SheetProps } from './sheet.ts';

type Body = Extract<Fact, { kind: 'room-read' }>['body'];

/** Nobody ferments below this or above it: asked about once. */
const COLD_C = 5;
const HOT_C = 45;

export function RoomSheet({ place, words, nowMs, saved, onSave, onClose }: SheetProps<Body>) {
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
