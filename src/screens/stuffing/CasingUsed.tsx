import { useState } from 'react';
import { lengthFromMm } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';

const MOST_MM = 10_000_000;

/** The length of casing that the batch took: the next plan of casing starts from the maker's own fill. May be left out. */
export function CasingUsed({ batch, place, words }: { batch: Batch; place: Place; words: Words }) {
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState(false);
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const say = words.stuffing.used;
  const { casingUsed } = batch;
  const unit = place.mass === 'metric' ? 'm' : 'ft';
  const shown = (lengthMm: number, places: number) =>
    decimal(lengthFromMm({ lengthMm, unit }), places, place);
  const saved = words.app.unsaved(saving);

  const keep = async () => {
    const read = readQuantity({ text, unit, decimal: place.decimal, least: 10, most: MOST_MM });
    if (!read.ok) {
      setProblem(words.fields.problem(read.problem, { least: shown(10, 2), most: shown(MOST_MM, 0) }));
      return;
    }
    const result = await save([
      {
        kind: 'casing-used',
        subject: batch.id,
        body: { usedM: read.value / 1000, typed: { usedM: read.typed } },
        ...(casingUsed ? { strikes: { id: casingUsed.id, reason: words.stuffing.measuredAgain } } : {}),
      },
    ]);
    if (result.ok) setOpen(false);
  };

  return (
    <>
      <Button kind="quiet" onPress={() => setOpen(true)}>
        {casingUsed ? say.known(`${shown(1000 * casingUsed.body.usedM, 1)}\u00a0${unit}`) : say.act}
      </Button>
      {open && (
        <Sheet
          open
          onClose={() => setOpen(false)}
          title={say.title}
          closeLabel={words.app.close}
          acts={
            <Button kind="primary" onPress={() => void keep()} disabled={saving.state === 'saving'}>
              {words.bench.save}
            </Button>
          }
        >
          <NumberField
            label={say.field}
            hint={say.hint}
            unit={unit}
            text={text}
            onText={(typed) => {
              setText(typed);
              setProblem(null);
            }}
            {...(problem ? { problem } : {})}
          />
          {saved && <SavedMark state={saved.state} text={saved.text} />}
        </Sheet>
      )}
    </>
  );
}
