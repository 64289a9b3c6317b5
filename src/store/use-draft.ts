import { useCallback, useEffect, useState } from 'react';
import { dropDraft, readDraft, saveDraft } from './drafts.ts';

/** What is being typed: `undefined` while the kept one is read, null where nothing was kept. */
export type Kept<T> = {
  readonly value: T | null | undefined;
  readonly set: (value: T) => void;
  readonly drop: () => Promise<void>;
};

/**
 * Half-typed fields that survive a kill. `restore` looks at what was kept, perhaps by another build, and answers null when
 * it does not know its shape.
 */
export function useDraft<T>(key: string, restore: (kept: unknown) => T | null): Kept<T> {
  const [held, setHeld] = useState<{ key: string; value: unknown } | null>(null);
  useEffect(() => {
    let left = false;
    void readDraft(key).then((text) => {
      if (!left) setHeld({ key, value: text === undefined ? null : parsed(text) });
    });
    return () => {
      left = true;
    };
  }, [key]);
  const set = useCallback(
    (value: T) => {
      setHeld({ key, value });
      void saveDraft(key, JSON.stringify(value));
    },
    [key],
  );
  const drop = useCallback(() => {
    setHeld({ key, value: null });
    return dropDraft(key);
  }, [key]);
  if (held === null || held.key !== key) return { value: undefined, set, drop };
  return { value: restore(held.value), set, drop };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
