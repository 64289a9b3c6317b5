import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import { joined, mass, massUnit } from '#words/format.ts';
import styles from './StuffingScreen.module.css';
import type { Shared } from './stuffing-view.ts';

/** String, clip, hook and tag are lighter than this (common practice): more is a digit too many, and is asked about once. */
const HEAVY_TARE_G = 100;

/** What all pieces share, said once before the first is weighed. */
export function SharedForm({
  shared,
  place,
  words,
  onShared,
}: {
  shared: Shared;
  place: Place;
  words: Words;
  onShared: (shared: Shared) => void;
}) {
  const text = (value: number) => String(value).replace('.', place.decimal);
  const [diameter, setDiameter] = useState(text(shared.diameterMm));
  const [casing, setCasing] = useState(shared.casing);
  const [target, setTarget] = useState(text(shared.targetLossPct));
  const [tare, setTare] = useState(text(shared.tareG));
  const [shown, setShown] = useState(false);
  const [asking, setAsking] = useState(false);
  const { stuffing, fields } = words;
  const tareUnit = massUnit(0, place);
  const { decimal } = place;
  const mm = readQuantity({ text: diameter, unit: 'mm', decimal, least: 5, most: 300 });
  const loss = readQuantity({ text: target, unit: '%', decimal, least: 1, most: 80 });
  const tareG = readQuantity({ text: tare, unit: tareUnit, decimal, least: 0, most: 2000 });
  const problem = (read: typeof mm, least: string, most: string) =>
    shown && !read.ok ? { problem: fields.problem(read.problem, { least, most }) } : {};
  const begin = (kept: boolean) => {
    if (!mm.ok || !loss.ok || !tareG.ok) return;
    if (tareG.value > HEAVY_TARE_G && !kept) {
      setAsking(true);
      return;
    }
    onShared({
      diameterMm: mm.value,
      targetLossPct: loss.value,
      tareG: tareG.value,
      casing: casing.trim(),
    });
  };
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setShown(true);
        begin(false);
      }}
    >
      <NumberField
        label={stuffing.diameter}
        text={diameter}
        onText={setDiameter}
        unit="mm"
        {...problem(mm, '5 mm', '300 mm')}
      />
      <TextField
        label={stuffing.casing}
        hint={stuffing.casingHint}
        text={casing}
        onText={setCasing}
        maxLength={80}
      />
      <NumberField
        label={stuffing.target}
        hint={stuffing.targetHint}
        text={target}
        onText={setTarget}
        unit="%"
        {...problem(loss, '1 %', '80 %')}
      />
      <NumberField
        label={stuffing.tare}
        hint={stuffing.tareHint}
        text={tare}
        onText={setTare}
        unit={tareUnit}
        {...problem(tareG, '0', '2000 g')}
      />
      <Button submit kind="primary">
        {stuffing.begin}
      </Button>
      {asking && tareG.ok && (
        <Ask
          question={stuffing.heavyTare(`${tare} ${tareUnit}`, joined(mass(HEAVY_TARE_G, 1, place)))}
          changeLabel={words.app.change}
          keepLabel={words.app.keep}
          onChange={() => setAsking(false)}
          onKeep={() => begin(true)}
        />
      )}
    </form>
  );
}
