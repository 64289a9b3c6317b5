import type { ReactNode } from 'react';
import { Mark } from './Mark.tsx';
import { PassOn } from './PassOn.tsx';
import styles from './SavedMark.module.css';

export type SavedState = 'saving' | 'saved' | 'not-saved';

export type SavedMarkProps = {
  state: SavedState;
  /** The word for the state: saved only once it is on disk. */
  text: string;
  /** What can be done about it: undo after saving, another try where it failed. */
  act?: ReactNode;
};

const SHAPES = { saving: 'saving', saved: 'saved', 'not-saved': 'error' } as const;

export function SavedMark({ state, text, act }: SavedMarkProps) {
  return (
    <div className={`${styles.saved} ${state === 'not-saved' ? styles.failed : ''}`}>
      <p className={styles.words} role={state === 'not-saved' ? 'alert' : 'status'}>
        <Mark shape={SHAPES[state]} />
        {text}
      </p>
      {act}
      {state === 'not-saved' && <PassOn />}
    </div>
  );
}
