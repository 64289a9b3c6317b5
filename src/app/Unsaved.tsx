import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { useStoreState } from '#store/use-store-state.ts';
import { PassOnContext } from '#ui/PassOn.tsx';
import type { Words } from '#words/en.ts';
import type { Language } from './language.ts';
import { unsavedText } from './unsaved-text.ts';

/** Whatever screen a save fails on, what was typed there can be passed on. */
export function Unsaved({ language, children }: { language: Language; children: ReactNode }) {
  const { unsaved } = useStoreState();
  const [words, setWords] = useState<Words | null>(null);
  const none = unsaved.length === 0;
  useEffect(() => {
    // The screen that could not save has them already; one that never came has nothing to pass on.
    if (!none) language.all().then(setWords, () => setWords(null));
  }, [none, language]);
  const toPassOn = useMemo(
    () => (none || words === null ? null : { text: unsavedText(unsaved, words), ...words.app.passOn }),
    [none, unsaved, words],
  );
  return <PassOnContext value={toPassOn}>{children}</PassOnContext>;
}
