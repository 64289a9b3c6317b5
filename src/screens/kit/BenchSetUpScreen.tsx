import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { useAppend } from '#store/use-append.ts';
import { useDraft } from '#store/use-draft.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { TextField } from '#ui/TextField.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import {
  type BenchForm,
  benchFacts,
  benchProblems,
  formOf,
  restoreForm,
  ruleSetOptions,
  withMass,
} from './bench-view.ts';
import { toFirstProblem } from './to-first-problem.ts';

/** Units, rule set and initials: chosen once, one save. The first time it goes on to the scale. */
export function BenchSetUpScreen({ words, place }: { words: Words; place: Place }) {
  const draft = useDraft('kit/bench', restoreForm);
  const { saving, save } = useAppend(place.initials);
  const [shown, setShown] = useState(false);
  if (draft.value === undefined) return <Waiting label={words.app.waiting} />;
  const form = draft.value ?? formOf(place);
  const change = (part: Partial<BenchForm>) => draft.set({ ...form, ...part });
  const { bench } = words.kit;
  const problems = shown ? benchProblems(form, words) : {};
  const said = <T extends string>(value: T | undefined) => (value === undefined ? {} : { problem: value });
  const mark = words.app.saving(saving);

  const submit = async () => {
    setShown(true);
    const facts = benchFacts(form, place);
    if (facts === null) {
      toFirstProblem();
      return;
    }
    if (!(await save(facts)).ok) return;
    await draft.drop();
    window.location.hash = place.chosen ? '#/kit' : '#/kit/scales';
  };

  return (
    <Page
      title={bench.title}
      sentence={place.chosen ? bench.again : bench.first}
      back={{ href: '#/kit', label: words.kit.toKit }}
      acts={
        <Button kind="primary" onPress={() => void submit()} disabled={saving.state === 'saving'}>
          {place.chosen ? bench.save : bench.saveFirst}
        </Button>
      }
    >
      <Choice
        label={bench.mass}
        options={(['metric', 'pounds'] as const).map((value) => ({ value, ...bench.masses[value] }))}
        value={form.mass}
        onValue={(mass) => draft.set(withMass(form, mass))}
        {...said(problems.mass)}
      />
      <Choice
        label={bench.temperature}
        options={[
          { value: 'C', label: '°C' },
          { value: 'F', label: '°F' },
        ]}
        value={form.temperature}
        onValue={(temperature) => change({ temperature })}
        {...said(problems.temperature)}
      />
      <Choice
        label={bench.decimal}
        options={(['.', ','] as const).map((value) => ({ value, ...bench.decimals[value] }))}
        value={form.decimal}
        onValue={(decimal) => change({ decimal })}
      />
      <Choice
        label={bench.ruleSet}
        hint={bench.ruleSetHint}
        options={ruleSetOptions(words, form)}
        value={form.ruleSet}
        onValue={(ruleSet) => change({ ruleSet })}
        {...said(problems.ruleSet)}
      />
      <List>
        <Row href="#/limits" title={bench.toLimits} />
      </List>
      <Choice
        label={bench.paper}
        options={[
          { value: 'A4', label: 'A4' },
          { value: 'Letter', label: 'Letter' },
        ]}
        value={form.paper}
        onValue={(paper) => change({ paper })}
      />
      <TextField
        label={bench.initials}
        hint={bench.initialsHint}
        text={form.initials}
        onText={(initials) => change({ initials })}
        capitals="characters"
        maxLength={12}
      />
      {mark && <SavedMark state={mark.state} text={mark.text} />}
    </Page>
  );
}
