import { type ReactNode, useMemo } from 'react';
import { useStoreState } from '#store/use-store-state.ts';
import { PassOnContext } from '#ui/PassOn.tsx';
import type { Words } from '#words/en.ts';
import { unsavedText } from './unsaved-text.ts';

/** Whatever screen a save fails on, what was typed there can be passed on. */
export function Unsaved({ words, children }: { words: Words; children: ReactNode }) {
  const { unsaved } = useStoreState();
  const toPassOn = useMemo(
    () => (unsaved.length === 0 ? null : { text: unsavedText(unsaved, words), ...words.app.passOn }),
    [unsaved, words],
  );
  return <PassOnContext value={toPassOn}>{children}</PassOnContext>;
}
