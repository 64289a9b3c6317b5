import { useState } from 'react';
import { Choice } from './Choice.tsx';
import { DateTimeField } from './DateTimeField.tsx';
import { NumberField } from './NumberField.tsx';
import { parseNumber } from './number-input.ts';
import styles from './Specimen.module.css';
import { TextField } from './TextField.tsx';

/** The fields of the specimen page, which hold what is typed. */
export function SpecimenFields() {
  const [ph, setPh] = useState('5,x');
  const [chamber, setChamber] = useState('−18');
  const [lot, setLot] = useState('2611-B');
  const [note, setNote] = useState('');
  const [at, setAt] = useState('2026-01-04T18:00');
  const [unit, setUnit] = useState<'g' | 'oz' | 'lb' | null>('g');
  const read = parseNumber(ph, ',');
  return (
    <section className={styles.part}>
      <h2>Fields</h2>
      <NumberField
        label="pH"
        hint="middle of the piece"
        text={ph}
        onText={setPh}
        unit="pH"
        previous="last 5.46, 6 hours ago"
        {...(read.ok ? {} : { problem: `This is no number (${read.problem}). Write it like 5,46.` })}
      />
      <NumberField label="Freezer" text={chamber} onText={setChamber} unit="°C" signLabel="below zero" />
      <TextField
        label="Lot"
        text={lot}
        onText={setLot}
        capitals="characters"
        offered={['2610-A', '2611-B']}
      />
      <TextField label="Note" text={note} onText={setNote} long hint="What you saw or smelled" />
      <DateTimeField label="When" text={at} onText={setAt} />
      <Choice
        label="Masses in"
        hint="Can be changed at any time"
        value={unit}
        onValue={setUnit}
        options={[
          { value: 'g', label: 'grams' },
          { value: 'oz', label: 'ounces', note: 'avoirdupois' },
          { value: 'lb', label: 'pounds' },
        ]}
      />
      <Choice
        label="Rules of"
        value={null}
        onValue={setUnit}
        options={[{ value: 'g', label: 'one place' }]}
        problem="Choose one to go on."
      />
    </section>
  );
}
