import { type ReactNode, useEffect, useId, useRef } from 'react';
import styles from './Sheet.module.css';

export type SheetProps = {
  open: boolean;
  onClose: () => void;
  title: string;
  closeLabel: string;
  children: ReactNode;
  /** Buttons that stay at the foot. */
  acts?: ReactNode;
};

/**
 * A sheet of paper laid over the page. Escape and the cross close it; so does a tap beside it, unless something could
 * have been typed in it: a stray thumb must not throw that away.
 */
export function Sheet({ open, onClose, title, closeLabel, children, acts }: SheetProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const element = dialog.current;
    if (!element) return;
    if (open && !element.open) element.showModal();
    if (!open && element.open) element.close();
  }, [open]);
  useEffect(() => (dialog.current ? closeFromBeside(dialog.current) : undefined), []);
  return (
    <dialog ref={dialog} className={styles.sheet} aria-labelledby={titleId} onClose={onClose}>
      {open && (
        <div className={styles.inside}>
          <header className={styles.head}>
            <h2 id={titleId} className={styles.title}>
              {title}
            </h2>
            <button
              type="button"
              className={styles.close}
              aria-label={closeLabel}
              onClick={() => dialog.current?.close()}
            >
              <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
                <path d="M3 3l14 14M17 3 3 17" stroke="currentColor" strokeWidth="2.4" />
              </svg>
            </button>
          </header>
          {children}
          {acts && <div className={styles.acts}>{acts}</div>}
        </div>
      )}
    </dialog>
  );
}

/** What lies beside the sheet counts as the dialog itself. Both ends of the tap must be there, as when selecting text. */
function closeFromBeside(sheet: HTMLDialogElement) {
  let began = false;
  const down = (event: PointerEvent) => {
    began = event.target === sheet;
  };
  const click = (event: MouseEvent) => {
    const beside = began && event.target === sheet;
    if (beside && !sheet.querySelector('input, textarea, select')) sheet.close();
  };
  sheet.addEventListener('pointerdown', down);
  sheet.addEventListener('click', click);
  return () => {
    sheet.removeEventListener('pointerdown', down);
    sheet.removeEventListener('click', click);
  };
}
