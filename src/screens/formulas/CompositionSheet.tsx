import type { Formula } from '#core/formula/formula.ts';
import type { Place } from '#record/place.ts';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import styles from './CompositionSheet.module.css';
import { compositionView } from './composition-view.ts';
import type { FormulaPlan } from './formula-plan.ts';

/** Water, protein, fat and salt: as mixed, and what they become at the loss aimed at. */
export function CompositionSheet({
  formula,
  plan,
  place,
  words,
  onClose,
}: {
  formula: Formula;
  plan: FormulaPlan;
  place: Place;
  words: Words;
  onClose: () => void;
}) {
  const say = words.formulaSheets.composition;
  const view = compositionView(formula, plan, place, words);
  return (
    <Sheet open onClose={onClose} title={say.title} closeLabel={words.app.close}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">{say.part}</th>
            {view.heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {view.rows.map(({ label, cells }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {cells.map((cell, at) => (
                <td key={view.heads[at]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {view.notes.map((note) => (
        <p key={note} className={styles.note}>
          {note}
        </p>
      ))}
      <section>
        <h3>{say.working}</h3>
        <p>{view.equation}</p>
        <ul className={styles.items}>
          {[...view.cuts, ...view.sources].map((text) => (
            <li key={text} className={styles.note}>
              {text}
            </li>
          ))}
        </ul>
      </section>
    </Sheet>
  );
}
