import { useState } from 'react';
import type { Place } from '#record/place.ts';
import type { Fact } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { useQuantity } from '#ui/use-quantity.ts';
import type { Words } from '#words/en.ts';

type Body = Extract<Fact, { kind: 're-targeted' }>['body'];

/** Another target for one piece; the old one stays on the record. */
export function TargetSheet({
  place,
  words,
  saved,
  onSave,
  onClose,
}: {
  place: Place;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: Body) => void;
  onClose: () => void;
}) {
  const { target } = words.piece;
  const loss = useQuantity({ unit: '%', decimal: place.decimal, least: 1, most: 80 });
  const [reason, setReason] = useState('');
  const [shown, setShown] = useState(false);
  return (
    <Sheet
      open
      onClose={onClose}
      title={target.title}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (loss.read.ok && reason.trim())
              onSave({
                targetLossPct: loss.read.value,
                reason: reason.trim(),
                typed: { targetLossPct: loss.read.typed },
              });
          }}
        >
          {target.save}
        </Button>
      }
    >
      <NumberField
        label={target.label}
        hint={words.stuffing.targetHint}
        text={loss.text}
        onText={loss.onText}
        unit="%"
        {...(shown && !loss.read.ok
          ? { problem: words.fields.problem(loss.read.problem, { least: '1 %', most: '80 %' }) }
          : {})}
      />
      <TextField
        label={target.reason}
        text={reason}
        onText={setReason}
        maxLength={400}
        {...(shown && !reason.trim() ? { problem: target.needed } : {})}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
