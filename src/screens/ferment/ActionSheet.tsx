import { useState } from 'react';
import type { Fact } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { SheetProps } from './sheet.ts';

type Body = Extract<Fact, { kind: 'action-taken' }>['body'];

/** After the degree-hours have passed: what the source says to do, and what was done. */
export function ActionSheet({ words, saved, onSave, onClose }: SheetProps<Body>) {
  const { action } = words.ferment;
  const [cause, setCause] = useState('');
  const [done, setDone] = useState('');
  const [product, setProduct] = useState('');
  const [prevention, setPrevention] = useState('');
  const [shown, setShown] = useState(false);
  return (
    <Sheet
      open
      onClose={onClose}
      title={action.title}
      closeLabel={words.app.close}
      acts={
        <Button
          kind="primary"
          disabled={saved?.state === 'saving'}
          onPress={() => {
            setShown(true);
            if (done.trim())
              onSave(
                {
                  about: 'degree-hours',
                  cause: cause.trim(),
                  action: done.trim(),
                  product: product.trim(),
                  prevention: prevention.trim(),
                },
                null,
              );
          }}
        >
          {action.save}
        </Button>
      }
    >
      <Notice kind="caution">{action.text}</Notice>
      <p>{action.only}</p>
      <TextField
        label={action.action}
        text={done}
        onText={setDone}
        maxLength={1000}
        long
        {...(shown && !done.trim() ? { problem: action.needed } : {})}
      />
      <TextField label={action.cause} text={cause} onText={setCause} maxLength={1000} long />
      <TextField label={action.product} text={product} onText={setProduct} maxLength={1000} long />
      <TextField label={action.prevention} text={prevention} onText={setPrevention} maxLength={1000} long />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
