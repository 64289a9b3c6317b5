import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import type { Words } from '#words/en.ts';
import styles from './FormulaScreen.module.css';
import type { GuardView } from './guards-view.ts';

/** What this formula makes a careful colleague ask. Nothing stands here where nothing was found. */
export function Guards({ guards, words }: { guards: readonly GuardView[]; words: Words }) {
  if (guards.length === 0) return null;
  const stops = guards.some(({ asks }) => asks === 'stop');
  return (
    <Notice kind={stops ? 'error' : 'caution'} title={words.formulas.guards}>
      <ul className={styles.guards}>
        {guards.map(({ key, text, standing }) => (
          <li key={key}>
            {text} <span className={styles.small}>({standing})</span>
          </li>
        ))}
      </ul>
    </Notice>
  );
}

/** The usual cautions, and the way to the hazards told plainly. */
export function Cautions({ words }: { words: Words }) {
  const say = words.formulas;
  return (
    <section className={styles.cautions}>
      <h2>{say.cautions}</h2>
      <ul>
        {[...say.usual, words.app.caution.short].map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <Button kind="quiet" href="#/hazards">
        {words.app.caution.more}
      </Button>
    </section>
  );
}
