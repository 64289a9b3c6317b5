import { useState } from 'react';
import type { Batch } from '#record/batch.ts';
import type { Check } from '#record/instruments.ts';
import type { Meter } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Fact } from '#store/use-append.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { Notice } from '#ui/Notice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import { WhenField } from '#ui/WhenField.tsx';
import { readWhen } from '#ui/when-input.ts';
import { decimal } from '#words/format.ts';
import { doubtsOf, productMm } from './doubts.ts';
import { type SheetProps, taken } from './sheet.ts';

type Body = Extract<Fact, { kind: 'ph-read' }>['body'];

/** What speaks against a reading is asked about once, and kept if the maker keeps it; the record says that it was. */
export function PhSheet({
  place,
  words,
  nowMs,
  saved,
  meters,
  batch,
  checks,
  onSave,
  onClose,
}: SheetProps<Body> & { meters: readonly Meter[]; batch: Batch; checks: readonly Check[] }) {
  const stuffed = batch.stuffedAtMs !== null;
  const { ph, method, sample } = words.ferment;
  const { fields } = words;
  const value = useQuantity({ unit: 'pH', decimal: place.decimal, least: 0, most: 14 });
  const thick = useQuantity({ unit: 'mm', decimal: place.decimal, least: 1, most: 300 });
  const [what, setWhat] = useState<Body['sample']>(stuffed ? 'packet' : 'mix');
  const [how, setHow] = useState<Body['method']>('meter');
  const [doubt, setDoubt] = useState<'believed' | 'doubtful'>('believed');
  const [meter, setMeter] = useState<SubjectId | null>(
    meters.length === 1
      ? (meters[0]?.id ?? null)
      : taken(batch.ph.findLast(({ body }) => body.meter !== undefined)?.body.meter, meters),
  );
  const [when, setWhen] = useState<string | null>(null);
  const [shown, setShown] = useState(false);
  const [asking, setAsking] = useState<readonly string[]>([]);
  const at = readWhen(when, nowMs);
  const say = words.fermentAhead.doubt;
  const reading = {
    ph: value.read.ok ? value.read.value : 5,
    sample: what,
    method: how,
    ...(how === 'meter' && meter ? { meter } : {}),
    ...(what === 'packet' && thick.read.ok ? { sampleMm: thick.read.value } : {}),
  };
  const doubts = doubtsOf({
    batch,
    checks,
    reading,
    atMs: (at.ok ? at.atMs : null) ?? nowMs,
    place,
    words,
  });

  const save = (kept: boolean) => {
    setShown(true);
    const { read } = value;
    if (!read.ok || !at.ok) return;
    if (what === 'packet' && !thick.empty && !thick.read.ok) return;
    if (doubts.asked.length > 0 && !kept) {
      setAsking(doubts.asked.map(({ text }) => text));
      return;
    }
    setAsking([]);
    const codes = [...doubts.asked, ...doubts.said].map(({ code }) => code);
    onSave(
      {
        ...reading,
        ph: read.value,
        doubted: doubt === 'doubtful',
        typed: {
          ph: read.typed,
          ...(what === 'packet' && thick.read.ok ? { sampleMm: thick.read.typed } : {}),
        },
        ...(codes.length > 0 ? { kept: codes } : {}),
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
      {what === 'packet' && (
        <NumberField
          label={say.sampleMm}
          hint={say.sampleMmHint(decimal(productMm(batch), 0, place))}
          text={thick.text}
          onText={thick.onText}
          unit="mm"
          {...(shown && !thick.empty && !thick.read.ok
            ? { problem: fields.problem(thick.read.problem, { least: '1 mm', most: '300 mm' }) }
            : {})}
        />
      )}
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
      {doubts.said.length > 0 && (
        <Notice
          kind="caution"
          act={
            <Button kind="quiet" href={meter ? `#/instruments/${meter.split(':')[1]}` : '#/instruments'}>
              {say.check}
            </Button>
          }
        >
          {doubts.said.map(({ text }) => text).join(' ')}
        </Notice>
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
      {asking.length > 0 && (
        <Ask
          question={say.ask(value.text)}
          detail={asking.map((text) => <p key={text}>{text}</p>)}
          changeLabel={words.app.change}
          keepLabel={words.app.keep}
          onChange={() => setAsking([])}
          onKeep={() => save(true)}
        />
      )}
    </Sheet>
  );
}
