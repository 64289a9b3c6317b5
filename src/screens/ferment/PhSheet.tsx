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
import { decimal } from '#words/format.ts';
import type { SheetProps } from './sheet.ts';

type Body = Extract<Fact, { kind: 'ph-read' }>['body'];

/** No sausage is more acid or less: asked about once, and kept if the maker keeps it. */
const LOWEST_PH = 4;
const HIGHEST_PH = 7;

export function PhSheet({
  place,
  words,
  nowMs,
  saved,
  meters,
  stuffed,
  onSave,
  onClose,
}: SheetProps<Body> & { meters: readonly Meter[]; stuffed: boolean }) {
  const { ph, method, sample } = words.ferment;
  const { fields } = words;
  const value = useQuantity({ unit: 'pH', decimal: place.decimal, least: 0, most: 14 });
  const [what, setWhat] = useState<Body['sample']>(stuffed ? 'packet' : 'mix');
  const [how, setHow] = useState<Body['method']>('meter');
  const [doubt, setDoubt] = useState<'believed' | 'doubtful'>('believed');
  const [meter, setMeter] = useState<SubjectId | null>(meters.length === 1 ? (meters[0]?.id ?? null) : null);
  const [when, setWhen] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const [question, setQuestion] = useState<string | null>(null);
  const at = readWhen(when, nowMs);

  const save = (kept: boolean) => {
    setShown(true);
    const { read } = value;
    if (!read.ok || !at.ok) return;
    const unlikely = read.value < LOWEST_PH || read.value > HIGHEST_PH;
    if (unlikely && !kept) {
      setQuestion(ph.unlikely(decimal(read.value, 2, place)));
      return;
    }
    setQuestion(null);
    onSave(
      {
        ph: read.value,
        sample: what,
        method: how,
        doubted: doubt === 'doubtful',
        ...(how === 'meter' && meter ? { meter } : {}),
        typed: { ph: read.typed },
        ...(unlikely ? { kept: ['ph'] } : {}),
      },
      at.atMs,
    );
  };

  return (
    <Sheet
      open
      onClose={onClose}
      title={ph.title}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" onPress={() => save(false)} disabled={saved?.state === 'saving'}>
          {ph.save}
        </Button>
      }
    >
      <NumberField
        label={ph.value}
        text={value.text}
        onText={value.onText}
        {...(shown && !value.read.ok
          ? { problem: fields.problem(value.read.problem, { least: '0', most: '14' }) }
          : {})}
      />
      <Choice
        label={ph.sample}
        hint={ph.sampleHint}
        options={(['mix', 'packet', 'piece'] as const).map((each) => ({ value: each, label: sample[each] }))}
        value={what}
        onValue={setWhat}
      />
      <Choice
        label={ph.method}
        options={(['meter', 'strip'] as const).map((each) => ({ value: each, label: method[each] }))}
        value={how}
        onValue={setHow}
      />
      {how === 'meter' && meters.length > 1 && (
        <Choice
          label={ph.meter}
          options={meters.map(({ id, name }) => ({ value: id, label: name }))}
          value={meter}
          onValue={setMeter}
        />
      )}
      <Choice
        label={ph.doubt}
        options={[
          { value: 'believed', label: ph.believed },
          { value: 'doubtful', label: ph.doubtful },
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
