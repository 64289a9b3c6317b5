import { Choice } from '#ui/Choice.tsx';
import { DateTimeField } from '#ui/DateTimeField.tsx';
import type { Words } from '#words/en.ts';
import type { Problems } from './read-received.ts';
import type { ReceivedForm } from './received-form.ts';

/** A pack of living culture: where it is kept and since when it has been open. Its age is counted from these. */
export function PackFields({
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
  return (
    <>
      <Choice
        label={say.storage}
        options={(['frozen', 'out-of-freezer'] as const).map((value) => ({
          value,
          label: say.storages[value],
        }))}
        value={form.storage}
        onValue={(storage) => onChange({ storage })}
      />
      <DateTimeField
        kind="date"
        label={say.opened}
        hint={say.openedHint}
        text={form.opened}
        onText={(opened) => onChange({ opened })}
        {...(problems.opened ? { problem: problems.opened } : {})}
      />
    </>
  );
}
