import { useState } from 'react';
import { Button } from './Button.tsx';
import { TextField } from './TextField.tsx';

export type PassphraseWords = { label: string; hint: string; act: string; tooShort: string; refused: string };

/** Fewer characters are found by trying, however they are turned into a key. */
const LEAST = 8;

/** A passphrase, in plain sight: a slip of the thumb that nobody saw would lock the file for good. */
export function Passphrase({
  words: { label, hint, act, tooShort, refused },
  onPassphrase,
}: {
  words: PassphraseWords;
  /** Whether it did what it was for. */
  onPassphrase: (passphrase: string) => Promise<boolean>;
}) {
  const [text, setText] = useState('');
  const [state, setState] = useState<'open' | 'busy' | 'short' | 'refused'>('open');
  const problem = state === 'short' ? tooShort : state === 'refused' ? refused : '';
  const press = async () => {
    if (text.length < LEAST) return setState('short');
    setState('busy');
    setState((await onPassphrase(text)) ? 'open' : 'refused');
  };
  return (
    <>
      <TextField
        label={label}
        hint={hint}
        text={text}
        capitals="none"
        maxLength={200}
        onText={(typed) => {
          setText(typed);
          setState('open');
        }}
        {...(problem ? { problem } : {})}
      />
      <Button disabled={state === 'busy'} onPress={() => void press()}>
        {act}
      </Button>
    </>
  );
}
