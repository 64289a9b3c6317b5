import { type KeyboardEvent, useRef, useState } from 'react';
import styles from './NumberPad.module.css';
import { type DecimalSign, type PadKey, pressKey } from './number-input.ts';

const ROWS = [
  '7',
  '8',
  '9',
  '4',
  '5',
  '6',
  '1',
  '2',
  '3',
  'decimal',
  '0',
  'back',
] as const satisfies PadKey[];
/** A click this soon after a press by finger is the echo of that press; one by keyboard (detail 0) never is. */
const ECHO_MS = 700;

export type NumberPadProps = {
  /** What has been typed, with the maker's decimal sign. */
  text: string;
  onText: (text: string) => void;
  decimal: DecimalSign;
  label: string;
  decimalLabel: string;
  backLabel: string;
  maxDigits?: number;
  maxDecimals?: number;
};

/** The app's own keys for the bench. Also takes the keys of a keyboard while the focus is inside. */
export function NumberPad(props: NumberPadProps) {
  const { text, onText, decimal, label, decimalLabel, backLabel, maxDigits = 7, maxDecimals = 3 } = props;
  const press = (key: PadKey) => onText(pressKey(text, key, { decimal, maxDigits, maxDecimals }));
  const typed = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const key = ROWS.find((each) => each === event.key);
    if (key) press(key);
    else if (event.key === ',' || event.key === '.') press('decimal');
    else if (event.key === 'Backspace') press('back');
    else return;
    event.preventDefault();
  };
  const names: Partial<Record<PadKey, string>> = { decimal: decimalLabel, back: backLabel };
  return (
    <fieldset className={styles.pad} aria-label={label} onKeyDown={typed}>
      {ROWS.map((key) => (
        <Key
          key={key}
          name={names[key]}
          onPress={() => press(key)}
          disabled={key === 'decimal' && maxDecimals === 0}
        >
          {key === 'back' ? <BackMark /> : key === 'decimal' ? decimal : key}
        </Key>
      ))}
    </fieldset>
  );
}

function Key({
  name,
  onPress,
  disabled,
  children,
}: {
  name: string | undefined;
  onPress: () => void;
  disabled: boolean;
  children: React.ReactNode;
}) {
  const [down, setDown] = useState(false);
  const pressedAt = useRef(Number.NEGATIVE_INFINITY);
  return (
    <button
      type="button"
      className={down ? `${styles.key} ${styles.down}` : styles.key}
      aria-label={name}
      disabled={disabled}
      onPointerDown={() => setDown(true)}
      onPointerCancel={() => setDown(false)}
      onPointerLeave={() => setDown(false)}
      onPointerUp={(event) => {
        // By finger the press counts when it is let go inside; a second thumb gets no click event, so clicks will not do.
        if (!down || event.button !== 0) return;
        setDown(false);
        pressedAt.current = event.timeStamp;
        onPress();
      }}
      onClick={(event) => {
        if (event.detail !== 0 && event.timeStamp - pressedAt.current < ECHO_MS) return;
        onPress();
      }}
      onContextMenu={(event) => event.preventDefault()}
    >
      {children}
    </button>
  );
}

function BackMark() {
  return (
    <svg viewBox="0 0 36 26" width="36" height="26" aria-hidden="true">
      <path
        d="M11.5 2H33a1.5 1.5 0 0 1 1.5 1.5v19A1.5 1.5 0 0 1 33 24H11.5L2 13ZM16 8l10 10M26 8 16 18"
        fill="none"
        stroke="currentColor"
        strokeWidth="3"
        strokeLinejoin="round"
      />
    </svg>
  );
}
