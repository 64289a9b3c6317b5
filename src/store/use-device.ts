import { useLiveQuery } from 'dexie-react-hooks';
import { currentDevice } from './device.ts';

/** The id under which this phone writes now; undefined while it loads. */
export function useDevice(): string | null | undefined {
  return useLiveQuery(() => currentDevice());
}
