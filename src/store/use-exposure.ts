import { useLiveQuery } from 'dexie-react-hooks';
import { type Exposure, exposure } from '#record/exposure.ts';
import { PLACE } from '#record/subject.ts';
import { log } from './database.ts';
import { entriesNow } from './entries.ts';
import { useOpen } from './live.ts';
import { rowsTouching } from './rows.ts';

/** What no backup holds yet, without reading all that one does. */
export function useExposure(): Exposure | undefined {
  const open = useOpen();
  return useLiveQuery(async () => {
    if (!open) return undefined;
    const entries = await log.entries.count();
    return exposure(await entriesNow(await rowsTouching([PLACE])), entries);
  }, [open]);
}
