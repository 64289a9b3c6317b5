import { createContext, useContext, useState } from 'react';
import { Button } from './Button.tsx';
import styles from './PassOn.module.css';

/** What was not saved, as text, and the words for handing it on. Null where nothing is unsaved. */
export type ToPassOn = { text: string; act: string; copied: string; byHand: string };

export const PassOnContext = createContext<ToPassOn | null>(null);

/** The way out for a value that this phone cannot keep: to the share sheet, or copied, or to be copied by hand. */
export function PassOn() {
  const toPassOn = useContext(PassOnContext);
  const [shown, setShown] = useState<'copied' | 'byHand' | null>(null);
  if (toPassOn === null) return null;
  const { text, act, copied, byHand } = toPassOn;
  const pass = async () => {
    if (typeof navigator.share === 'function') {
      const shared = await navigator.share({ text }).then(
        () => true,
        (error) => error instanceof DOMException && error.name === 'AbortError',
      );
      if (shared) return;
    }
    const done = await navigator.clipboard?.writeText(text).then(
      () => true,
      () => false,
    );
    setShown(done ? 'copied' : 'byHand');
  };
  return (
    <div className={styles.passOn}>
      <Button kind="quiet" onPress={() => void pass()}>
        {act}
      </Button>
      {shown && (
        <label className={styles.label}>
          {shown === 'copied' ? copied : byHand}
          <textarea className={styles.text} readOnly rows={4} value={text} />
        </label>
      )}
    </div>
  );
}
