import { useState } from 'react';
import type { Entry } from '#record/entry.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { zoneAt } from '#store/clock.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { DateTimeField } from '#ui/DateTimeField.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { localText } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';
import { type CorrectionDraft, type CorrectionField, readCorrection } from './clock-input.ts';
import type { ClockView } from './clock-view.ts';

/** Which entries, and when one of them truly was. What it would do is said before it is saved. */
export function CorrectionSheet({
  begun,
  entries,
  phones,
  nowMs,
  place,
  words,
  saved,
  onSave,
  onClose,
}: {
  begun: CorrectionDraft;
  entries: readonly Entry[];
  phones: ClockView['phones'];
  nowMs: number;
  place: Place;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: BodyOf<'clock-corrected'>) => void;
  onClose: () => void;
}) {
  const [draft, setDraft] = useState(begun);
  const [asked, setAsked] = useState(false);
  const say = words.clock;
  const read = readCorrection(draft, { entries, nowMs, zoneAt, place, words });
  const put = (changed: Partial<CorrectionDraft>) => setDraft({ ...draft, ...changed });
  const problem = (field: CorrectionField) => {
    const text = read.problems[field];
    return asked && text ? { problem: text } : {};
  };
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.sheet}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setAsked(true);
            if (read.body) onSave(read.body);
          }}
        >
          {say.save}
        </Button>
      }
    >
      {phones.length > 1 && (
        <Choice
          label={say.phoneLabel}
          options={phones}
          value={draft.device}
          onValue={(device) => put({ device })}
        />
      )}
      <NumberField
        label={say.from}
        hint={say.numberHint}
        text={draft.from}
        onText={(from) => put({ from })}
        {...problem('from')}
      />
      <NumberField label={say.to} text={draft.to} onText={(to) => put({ to })} {...problem('to')} />
      {read.rows.length > 0 && (
        <List label={say.list}>
          {read.rows.map(({ key, title, note }) => (
            <Row key={key} title={title} note={note} />
          ))}
        </List>
      )}
      {read.more && <p>{read.more}</p>}
      <Choice
        label={say.known}
        options={[
          { value: 'first', label: say.knownFirst },
          { value: 'last', label: say.knownLast },
        ]}
        value={draft.known}
        onValue={(known) => put({ known, truth: '' })}
      />
      <DateTimeField
        label={say.truth(read.shown)}
        hint={say.truthHint}
        text={draft.truth}
        onText={(truth) => put({ truth })}
        latest={localText(nowMs)}
        {...problem('truth')}
      />
      <TextField
        label={say.reason}
        hint={say.reasonHint}
        text={draft.reason}
        onText={(reason) => put({ reason })}
        maxLength={400}
        {...problem('reason')}
      />
      <div aria-live="polite">
        {read.preview && <Sentence tokens={read.preview} />}
        {read.notes.map((note) => (
          <Notice key={note} kind="caution">
            {note}
          </Notice>
        ))}
      </div>
      <p>{say.note}</p>
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
