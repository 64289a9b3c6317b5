import { useState } from 'react';
import { afterExceededLimit, type ExceededStep } from '#core/ferment/exceeded-limit.ts';
import type { RuleSetId } from '#core/rules/rule.ts';
import type { Fact } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { Tick } from '#ui/Tick.tsx';
import styles from './FermentScreen.module.css';
import type { SheetProps } from './sheet.ts';

type Body = Extract<Fact, { kind: 'action-taken' }>['body'];

/** After the degree-hours have passed: each step with the source that asks for it, and what was done. */
export function ActionSheet({
  words,
  saved,
  ruleSet,
  onSave,
  onClose,
}: SheetProps<Body> & { ruleSet: RuleSetId }) {
  const { action } = words.ferment;
  const say = words.afterFault;
  const { steps, never } = afterExceededLimit(ruleSet);
  const [ticked, setTicked] = useState<readonly ExceededStep[]>([]);
  const [cause, setCause] = useState('');
  const [more, setMore] = useState('');
  const [product, setProduct] = useState('');
  const [prevention, setPrevention] = useState('');
  const [shown, setShown] = useState(false);
  const done = [
    ...steps.filter(({ code }) => ticked.includes(code)).map(({ code }) => say.step[code]),
    more.trim(),
  ].filter(Boolean);
  const save = () => {
    setShown(true);
    if (done.length === 0) return;
    onSave(
      {
        about: 'degree-hours',
        cause: cause.trim(),
        action: done.join('; ').slice(0, 1000),
        product: product.trim(),
        prevention: prevention.trim(),
      },
      null,
    );
  };
  return (
    <Sheet
      open
      onClose={onClose}
      title={action.title}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" disabled={saved?.state === 'saving'} onPress={save}>
          {action.save}
        </Button>
      }
    >
      <Notice kind="caution">{action.text}</Notice>
      <p>{action.only}</p>
      {ruleSet === 'EU' && <p>{say.reference}</p>}
      <h3>{say.steps}</h3>
      <ul className={styles.steps}>
        {steps.map(({ code, source }) => {
          const from = words.workings.source(source);
          return (
            <Tick
              key={code}
              label={say.step[code]}
              note={`${from.text}; ${from.standing}`}
              checked={ticked.includes(code)}
              onChecked={(on) => setTicked(on ? [...ticked, code] : ticked.filter((each) => each !== code))}
            />
          );
        })}
      </ul>
      {never.map(({ code, source }) => (
        <p key={code} className={styles.never}>
          <strong>{say.neverTitle(say.never[code])}</strong> {words.workings.source(source).text}
        </p>
      ))}
      <TextField
        label={action.action}
        text={more}
        onText={setMore}
        maxLength={600}
        long
        {...(shown && done.length === 0 ? { problem: action.needed } : {})}
      />
      <TextField label={action.cause} text={cause} onText={setCause} maxLength={1000} long />
      <TextField label={action.product} text={product} onText={setProduct} maxLength={1000} long />
      <TextField label={action.prevention} text={prevention} onText={setPrevention} maxLength={1000} long />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
