import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import type { SubjectId } from '#record/subject.ts';
import { Button } from '#ui/Button.tsx';
import { Choice, type ChoiceOption } from '#ui/Choice.tsx';
import { ManyChoice } from '#ui/ManyChoice.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';

const KINDS = ['power-cut', 'controller-fault', 'other-fault'] as const;
type About = (typeof KINDS)[number];

/** One corrective action, kept in the record of each batch that it concerns. */
export function FaultSheet({
  words,
  batches,
  saved,
  onSave,
  onClose,
}: {
  words: Words;
  batches: readonly ChoiceOption<SubjectId>[];
  saved: { state: SavedState; text: string } | null;
  onSave: (batches: readonly SubjectId[], body: BodyOf<'action-taken'>) => void;
  onClose: () => void;
}) {
  const { form } = words.afterFault;
  const [about, setAbout] = useState<About>('power-cut');
  const [chosen, setChosen] = useState<SubjectId[]>(batches.map(({ value }) => value));
  const [cause, setCause] = useState('');
  const [done, setDone] = useState('');
  const [product, setProduct] = useState('');
  const [prevention, setPrevention] = useState('');
  const [shown, setShown] = useState(false);
  const save = () => {
    setShown(true);
    if (done.trim() === '' || chosen.length === 0) return;
    onSave(chosen, {
      about,
      cause: cause.trim(),
      action: done.trim(),
      product: product.trim(),
      prevention: prevention.trim(),
    });
  };
  return (
    <Sheet
      open
      onClose={onClose}
      title={words.afterFault.act}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" disabled={saved?.state === 'saving'} onPress={save}>
          {form.save}
        </Button>
      }
    >
      <Choice
        label={form.what}
        options={KINDS.map((value) => ({ value, label: form.kinds[value] }))}
        value={about}
        onValue={setAbout}
      />
      <ManyChoice
        label={form.batches}
        options={batches}
        values={chosen}
        onValues={setChosen}
        {...(shown && chosen.length === 0 ? { problem: form.choose } : {})}
      />
      <TextField label={form.cause} text={cause} onText={setCause} maxLength={1000} long />
      <TextField
        label={form.action}
        text={done}
        onText={setDone}
        maxLength={1000}
        long
        {...(shown && done.trim() === '' ? { problem: form.needed } : {})}
      />
      <TextField label={form.product} text={product} onText={setProduct} maxLength={1000} long />
      <TextField label={form.prevention} text={prevention} onText={setPrevention} maxLength={1000} long />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
