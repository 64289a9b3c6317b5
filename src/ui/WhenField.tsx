import { Choice } from './Choice.tsx';
import { DateTimeField } from './DateTimeField.tsx';
import { localText } from './when-input.ts';

export type WhenFieldProps = {
  /** Null: now. */
  text: string | null;
  onText: (text: string | null) => void;
  nowMs: number;
  problem?: string;
  words: { when: string; now: string; earlier: string; time: string };
};

/** Now, as nearly always; or earlier, by the phone's own picker. */
export function WhenField({ text, onText, nowMs, problem, words }: WhenFieldProps) {
  return (
    <>
      <Choice
        label={words.when}
        options={[
          { value: 'now', label: words.now },
          { value: 'earlier', label: words.earlier },
        ]}
        value={text === null ? 'now' : 'earlier'}
        onValue={(value) => onText(value === 'now' ? null : localText(nowMs))}
      />
      {text !== null && (
        <DateTimeField
          label={words.time}
          text={text}
          onText={onText}
          latest={localText(nowMs)}
          {...(problem ? { problem } : {})}
        />
      )}
    </>
  );
}
