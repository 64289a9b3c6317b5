import type { ReactNode } from 'react';
import styles from './Button.module.css';

export type ButtonKind = 'primary' | 'second' | 'quiet';

export type ButtonProps = {
  children: ReactNode;
  kind?: ButtonKind;
  /** Said aloud instead of the words inside, where those are too short to stand alone. */
  label?: string;
} & (
  | { href: string; download?: string }
  | { onPress: () => void; disabled?: boolean; expanded?: boolean }
  | { submit: true; disabled?: boolean }
);

/** What is pressed: one primary on a page, a second beside it, quiet ones in the text. With `href` it is a link. */
export function Button({ children, kind = 'second', label, ...does }: ButtonProps) {
  const className = `${styles.button} ${styles[kind]}`;
  if ('href' in does) {
    return (
      <a className={className} href={does.href} download={does.download} aria-label={label}>
        {children}
      </a>
    );
  }
  if ('submit' in does) {
    return (
      <button className={className} type="submit" disabled={does.disabled} aria-label={label}>
        {children}
      </button>
    );
  }
  return (
    <button
      className={className}
      type="button"
      onClick={does.onPress}
      disabled={does.disabled}
      aria-label={label}
      aria-expanded={does.expanded}
    >
      {children}
    </button>
  );
}
