import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';

type What = BodyOf<'meter-added'>['what'];

export function MeterSheet({
  words,
  saved,
  onSave,
  onClose,
}: {
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: BodyOf<'meter-added'>) => void;
  onClose: () => void;
}) {
  const [what, setWhat] = useState<What | null>(null);
  const [name, setName] = useState('');
  const [shown, setShown] = useState(false);
  const say = words.kit.scales;
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.addMeter}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (what !== null) onSave({ what, name: name.trim() || say.meterName[what] });
          }}
        >
          {say.save}
        </Button>
      }
    >
      <Choice
        label={say.what}
        options={(['ph-meter', 'thermometer', 'hygrometer'] as const).map((value) => ({
          value,
          label: say.meterName[value],
        }))}
        value={what}
        onValue={setWhat}
        {...(shown && what === null ? { problem: say.whatNeeded } : {})}
      />
      <TextField label={say.name} hint={say.nameHint} text={name} onText={setName} maxLength={80} />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
