import { useLiveQuery } from 'dexie-react-hooks';
import { useSyncExternalStore } from 'react';
import { type Health, health } from './health.ts';
import { onState, storeState } from './state.ts';

export function useHealth(): Health | undefined {
  useSyncExternalStore(onState, storeState);
  const state = storeState();
  return useLiveQuery(() => health(), [state]);
}
