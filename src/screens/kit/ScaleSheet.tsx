import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import {
  mostUnitOf,
  NEW_SCALE,
  type ReadScale,
  readScale,
  type ScaleForm,
  stepOptions,
} from './scale-form.ts';

/** A scale by its step: one tap and Save. Most and name may stay empty. */
export function ScaleSheet({
  place,
  words,
  saved,
  onSave,
  onClose,
}: {
  place: Place;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: Extract<ReadScale, { ok: true }>['body']) => void;
  onClose: () => void;
}) {
  const [form, setForm] = useState<ScaleForm>(NEW_SCALE);
  const [shown, setShown] = useState(false);
  const say = words.kit.scales;
  const read = readScale(form, place, words);
  const problems = shown && !read.ok ? read.problems : {};
  const change = (part: Partial<ScaleForm>) => setForm({ ...form, ...part });
  const said = (problem: string | undefined) => (problem === undefined ? {} : { problem });
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.addScale}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (read.ok) onSave(read.body);
          }}
        >
          {say.save}
        </Button>
      }
    >
      <Choice
        label={say.stepLabel}
        hint={say.stepHint}
        options={stepOptions(place, words)}
        value={form.step}
        onValue={(step) => change({ step })}
        {...said(problems.step)}
      />
      {form.step === 'other' && (
        <>
          <NumberField
            label={say.stepTyped}
            text={form.otherStep}
            onText={(otherStep) => change({ otherStep })}
            unit={form.stepUnit}
            {...said(problems.otherStep)}
          />
          <Choice
            label={say.stepUnit}
            options={(['g', 'oz', 'lb'] as const).map((value) => ({ value, label: value }))}
            value={form.stepUnit === 'kg' ? 'g' : form.stepUnit}
            onValue={(stepUnit) => change({ stepUnit })}
          />
        </>
      )}
      <NumberField
        label={say.mostLabel}
        hint={say.mostHint}
        text={form.most}
        onText={(most) => change({ most })}
        unit={mostUnitOf(form)}
        {...said(problems.most)}
      />
      <TextField
        label={say.name}
        hint={say.nameHint}
        text={form.name}
        onText={(name) => change({ name })}
        maxLength={80}
      />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
