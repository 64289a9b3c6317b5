import { type ReactNode, useEffect, useId, useRef } from 'react';
import styles from './Ask.module.css';
import { Button } from './Button.tsx';

export type AskProps = {
  /** What is unlikely about it, in words: the value and what was expected. */
  question: string;
  detail?: ReactNode;
  changeLabel: string;
  keepLabel: string;
  onChange: () => void;
  onKeep: () => void;
};

/** Asks once about something unlikely. Mounted while it is asked; Escape means change, so that nothing is kept by accident. */
export function Ask({ question, detail, changeLabel, keepLabel, onChange, onKeep }: AskProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const element = dialog.current;
    if (element && !element.open) element.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      className={styles.ask}
      role="alertdialog"
      aria-labelledby={`${id}-question`}
      aria-describedby={detail ? `${id}-detail` : undefined}
      onCancel={(event) => {
        event.preventDefault();
        onChange();
      }}
    >
      <h2 id={`${id}-question`} className={styles.question}>
        {question}
      </h2>
      {detail && (
        <div id={`${id}-detail`} className={styles.detail}>
          {detail}
        </div>
      )}
      <div className={styles.acts}>
        <Button kind="primary" onPress={onChange}>
          {changeLabel}
        </Button>
        <Button onPress={onKeep}>{keepLabel}</Button>
      </div>
    </dialog>
  );
}
