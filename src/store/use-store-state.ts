import { useSyncExternalStore } from 'react';
import { onState, type StoreState, storeState } from './state.ts';

/** How the store is right now, for what is said around the screens. */
export function useStoreState(): StoreState {
  return useSyncExternalStore(onState, storeState);
}
