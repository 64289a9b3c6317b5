import { useLiveQuery } from 'dexie-react-hooks';
import type { Head } from '#record/chain.ts';
import { lastRow } from './device.ts';
import { useOpen } from './live.ts';

/** The end of the chain of each device: it stands for all that was written there until now. */
export function useHeads(devices: readonly string[]): readonly Head[] | undefined {
  const open = useOpen();
  return useLiveQuery(async () => {
    if (!open) return undefined;
    const rows = await Promise.all(devices.map(lastRow));
    return rows.flatMap((row) => (row ? [{ device: row.device, seq: row.seq, hash: row.hash }] : []));
  }, [open, devices.join()]);
}
