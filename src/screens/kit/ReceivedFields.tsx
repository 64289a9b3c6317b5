import type { Lot, Place } from '#record/place.ts';
import { Choice } from '#ui/Choice.tsx';
import { DateTimeField } from '#ui/DateTimeField.tsx';
import { Notice } from '#ui/Notice.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { TextField } from '#ui/TextField.tsx';
import { VerdictMark } from '#ui/VerdictMark.tsx';
import { WhenField } from '#ui/WhenField.tsx';
import type { Words } from '#words/en.ts';
import { CureFields } from './CureFields.tsx';
import { PackFields } from './PackFields.tsx';
import type { Problems } from './read-received.ts';
import { asksAnimal, asksPack, asksTemperature, isGame, type ReceivedForm, WHATS } from './received-form.ts';
import { receivedGate } from './received-gate.ts';

/** The fields of a lot; what is asked depends on what came in. */
export function ReceivedFields({
  form,
  onForm,
  problems,
  place,
  words,
  nowMs,
  lots,
}: {
  form: ReceivedForm;
  onForm: (form: ReceivedForm) => void;
  problems: Problems;
  place: Place;
  words: Words;
  nowMs: number;
  lots: readonly Lot[];
}) {
  const say = words.received.form;
  const change = (part: Partial<ReceivedForm>) => onForm({ ...form, ...part });
  const said = (problem: string | undefined) => (problem === undefined ? {} : { problem });
  const before = lots.map(({ received }) => received.body).filter(({ what }) => what === form.what);
  const gate = asksTemperature(form.what) ? receivedGate(form.temp, { place, words }) : null;
  const offered = (values: readonly string[]) => [...new Set(values)].filter((value) => value !== '');
  return (
    <>
      <Choice
        label={say.what}
        options={WHATS.map((value) => ({ value, label: words.received.what[value] }))}
        value={form.what}
        onValue={(what) => change({ what })}
        {...said(problems.what)}
      />
      {form.what === 'cure' && <CureFields form={form} onChange={change} problems={problems} words={words} />}
      <TextField
        label={say.name}
        hint={say.nameHint}
        text={form.name}
        onText={(name) => change({ name })}
        maxLength={80}
        offered={offered(before.map(({ name }) => name))}
        {...said(problems.name)}
      />
      <TextField
        label={say.lot}
        hint={say.lotHint}
        text={form.lot}
        onText={(lot) => change({ lot })}
        capitals="none"
        maxLength={60}
      />
      <TextField
        label={say.supplier}
        text={form.supplier}
        onText={(supplier) => change({ supplier })}
        capitals="words"
        maxLength={80}
        offered={offered(lots.map(({ received }) => received.body.supplier))}
      />
      {asksAnimal(form.what) && (
        <Choice
          label={say.species}
          options={Object.entries(say.speciesOptions).map(([value, label]) => ({ value, label }))}
          value={form.species}
          onValue={(species) => change({ species })}
        />
      )}
      {asksAnimal(form.what) && isGame(form.species) && <Notice kind="caution">{say.gameNotice}</Notice>}
      {asksTemperature(form.what) && (
        <NumberField
          label={say.temperature}
          hint={say.temperatureHint}
          text={form.temp}
          onText={(temp) => change({ temp })}
          unit={place.temperature === 'C' ? '°C' : '°F'}
          signLabel={words.fields.keyboard.sign}
          {...said(problems.temp)}
        />
      )}
      {gate && <VerdictMark {...gate} />}
      <NumberField
        label={say.mass}
        hint={say.massHint}
        text={form.mass}
        onText={(mass) => change({ mass })}
        unit={form.massUnit}
        {...said(problems.mass)}
      />
      {form.mass !== '' && (
        <Choice
          label={say.massUnit}
          options={(place.mass === 'metric' ? (['g', 'kg'] as const) : (['oz', 'lb', 'g'] as const)).map(
            (value) => ({ value, label: value }),
          )}
          value={form.massUnit}
          onValue={(massUnit) => change({ massUnit })}
        />
      )}
      <WhenField
        text={form.when}
        onText={(when) => change({ when })}
        nowMs={nowMs}
        words={{ ...words.fields.when, when: say.when }}
        {...said(problems.when)}
      />
      {asksAnimal(form.what) && (
        <DateTimeField
          kind="date"
          label={say.packed}
          hint={say.optional}
          text={form.packed}
          onText={(packed) => change({ packed })}
          {...said(problems.packed)}
        />
      )}
      <DateTimeField
        kind="date"
        label={say.bestBefore}
        hint={say.optional}
        text={form.bestBefore}
        onText={(bestBefore) => change({ bestBefore })}
        {...said(problems.bestBefore)}
      />
      {asksPack(form.what) && <PackFields form={form} onChange={change} problems={problems} words={words} />}
      <TextField
        label={say.note}
        hint={say.optional}
        text={form.note}
        onText={(note) => change({ note })}
        maxLength={2000}
        long
      />
    </>
  );
}
