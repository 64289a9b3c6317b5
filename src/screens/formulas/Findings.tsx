import { useState } from 'react';
import { Button } from '#ui/Button.tsx';
import { VerdictMark } from '#ui/VerdictMark.tsx';
import { Working, type WorkingText } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import styles from './FormulaScreen.module.css';
import type { FindingView } from './formula-view.ts';

/** What the rule set says, one answer a line, each with its working. */
export function Findings({
  findings,
  ruleSet,
  words,
}: {
  findings: readonly FindingView[];
  ruleSet: string | null;
  words: Words;
}) {
  const [shown, setShown] = useState<WorkingText | null>(null);
  const say = words.formulas;
  return (
    <section aria-label={say.findings}>
      {findings.map(({ key, verdict, word, working }) => (
        <VerdictMark
          key={key}
          verdict={verdict}
          word={word}
          {...(working ? { working: { label: words.app.working, onOpen: () => setShown(working) } } : {})}
        />
      ))}
      {ruleSet === null ? (
        <Button kind="quiet" href="#/kit/bench">
          {say.toRuleSet}
        </Button>
      ) : (
        <p className={styles.small}>{ruleSet}</p>
      )}
      {shown && <Working working={shown} open onClose={() => setShown(null)} />}
    </section>
  );
}
