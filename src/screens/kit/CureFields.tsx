import { Choice } from '#ui/Choice.tsx';
import { Notice } from '#ui/Notice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import type { Words } from '#words/en.ts';
import type { Problems } from './read-received.ts';
import type { ReceivedForm } from './received-form.ts';

/** A curing salt by what its bag prints: how much nitrite and nitrate, and of which salt. */
export function CureFields({
  form,
  onChange,
  problems,
  words,
}: {
  form: ReceivedForm;
  onChange: (part: Partial<ReceivedForm>) => void;
  problems: Problems;
  words: Words;
}) {
  const say = words.received.form;
  const none = (text: string) => /^[\s0.,]*$/.test(text);
  return (
    <>
      <NumberField
        label={say.nitrite}
        hint={say.nitriteHint}
        text={form.nitrite}
        onText={(nitrite) => onChange({ nitrite })}
        unit="%"
        {...(problems.nitrite ? { problem: problems.nitrite } : {})}
      />
      {!none(form.nitrite) && (
        <Choice
          label={say.nitriteSalt}
          options={(['NaNO2', 'KNO2'] as const).map((value) => ({ value, ...say.salts[value] }))}
          value={form.nitriteSalt}
          onValue={(nitriteSalt) => onChange({ nitriteSalt })}
        />
      )}
      <NumberField
        label={say.nitrate}
        hint={say.nitrateHint}
        text={form.nitrate}
        onText={(nitrate) => onChange({ nitrate })}
        unit="%"
        {...(problems.nitrate ? { problem: problems.nitrate } : {})}
      />
      {!none(form.nitrate) && (
        <Choice
          label={say.nitrateSalt}
          options={(['NaNO3', 'KNO3'] as const).map((value) => ({ value, ...say.salts[value] }))}
          value={form.nitrateSalt}
          onValue={(nitrateSalt) => onChange({ nitrateSalt })}
        />
      )}
      <Notice kind="caution">{say.cureCaution}</Notice>
    </>
  );
}
