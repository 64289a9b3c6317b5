import { useState } from 'react';
import type { CasingKind } from '#core/formula/casing-tables.ts';
import type { Formula } from '#core/formula/formula.ts';
import { finishedFerments, ownFills } from '#record/own-figures.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useBatches } from '#store/live.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import styles from './CalcFields.module.css';
import { CalcFields } from './CalcFields.tsx';
import type { Texts } from './calc-view.ts';
import { casingOptions, casingView } from './casing-view.ts';
import type { FormulaPlan } from './formula-plan.ts';
import { labelView } from './label-view.ts';
import { sugarView } from './sugar-view.ts';
import { type WayCode, type WaysView, wayOptions, waysView } from './ways-view.ts';

export type CalcSheetProps = {
  formula: Formula;
  plan: FormulaPlan | null;
  place: Place;
  words: Words;
  onClose: () => void;
};

/** Other ways to size a batch; what comes of it can be set as the meat on the bench. */
export function WaysSheet({
  formula,
  place,
  words,
  onClose,
  onMeat,
}: CalcSheetProps & { onMeat: (meat: NonNullable<WaysView['meat']>) => void }) {
  const [code, setCode] = useState<WayCode>('finished');
  const [texts, setTexts] = useState<Texts>({});
  const say = words.formulaSheets;
  const view = waysView({ code, texts, formula, place, words });
  const { meat } = view;
  return (
    <Sheet
      open
      onClose={onClose}
      title={say.ways.title}
      closeLabel={words.app.close}
      acts={
        meat && (
          <Button kind="primary" onPress={() => onMeat(meat)}>
            {say.use}
          </Button>
        )
      }
    >
      <Choice label={say.ways.choose} options={wayOptions(words)} value={code} onValue={setCode} />
      <CalcFields view={view} texts={texts} onTexts={setTexts} />
    </Sheet>
  );
}

export function CasingSheet({ formula, plan, place, words, onClose }: CalcSheetProps) {
  const batches = useBatches();
  const [casing, setCasing] = useState<CasingKind | null>(null);
  const [texts, setTexts] = useState<Texts>({});
  const say = words.formulaSheets.casing;
  const mixG = plan?.out.figures.mixG ?? null;
  const own = formula.diameterMm === undefined ? [] : ownFills(batches ?? [], formula.diameterMm);
  const view = casingView({ casing, texts, formula, mixG, own, place, words });
  return (
    <Sheet open onClose={onClose} title={say.title} closeLabel={words.app.close}>
      <Choice label={say.kind} options={casingOptions(words)} value={casing} onValue={setCasing} />
      {view.printed.length + view.own.length > 0 && (
        <ul className={styles.items}>
          {[...view.own, ...view.printed].map((text) => (
            <li key={text} className={styles.note}>
              {text}
            </li>
          ))}
        </ul>
      )}
      <CalcFields view={view} texts={texts} onTexts={setTexts} />
    </Sheet>
  );
}

export function SugarSheet({
  formula,
  subject,
  plan,
  place,
  words,
  onClose,
}: CalcSheetProps & { subject: SubjectId }) {
  const batches = useBatches();
  const [texts, setTexts] = useState<Texts>({});
  const view = sugarView({
    texts,
    formula,
    plan,
    ferments: finishedFerments(batches ?? [], subject),
    place,
    words,
  });
  return (
    <Sheet open onClose={onClose} title={words.formulaSheets.sugar.title} closeLabel={words.app.close}>
      <CalcFields view={view} texts={texts} onTexts={setTexts} />
    </Sheet>
  );
}

export function LabelSheet({
  formula,
  plan,
  place,
  words,
  onClose,
}: Omit<CalcSheetProps, 'plan'> & { plan: FormulaPlan }) {
  const [copied, setCopied] = useState(false);
  const say = words.formulaSheets.label;
  const view = labelView(formula, plan, place, words);
  const copy = async () => {
    await navigator.clipboard.writeText(view.ingredients.join(', '));
    setCopied(true);
  };
  return (
    <Sheet open onClose={onClose} title={say.title} closeLabel={words.app.close}>
      <section>
        <h3>{say.ingredients}</h3>
        <p>{view.ingredients.join(', ')}.</p>
      </section>
      {view.meatFor && (
        <dl className={styles.result}>
          <dt>
            {say.meatFor} <span className={styles.note}>{view.meatFor.note}</span>
          </dt>
          <dd>{view.meatFor.value}</dd>
        </dl>
      )}
      {view.allergens.length > 0 && (
        <section>
          <h3>{say.allergens}</h3>
          <ul className={styles.items}>
            {view.allergens.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
      )}
      {view.notes.map((note) => (
        <p key={note} className={styles.note}>
          {note}
        </p>
      ))}
      <Button onPress={() => void copy()}>{copied ? say.copied : say.copy}</Button>
    </Sheet>
  );
}
