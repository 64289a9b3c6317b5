/** The id under which this store writes, and the end of its chain. */
import { Dexie } from 'dexie';
import { type DeviceRow, log, type Row } from './database.ts';

export async function currentDevice(): Promise<string | null> {
  // They are few, and read at once they come sooner than by a cursor from the end.
  const all: DeviceRow[] = await log.devices.toArray();
  return all.at(-1)?.device ?? null;
}

export function rowAt(device: string, seq: number): PromiseLike<Row | undefined> {
  return log.entries.where('[device+seq]').equals([device, seq]).first();
}

export function lastRow(device: string): PromiseLike<Row | undefined> {
  return log.entries.where('[device+seq]').between([device, Dexie.minKey], [device, Dexie.maxKey]).last();
}

/** The rows of a device from a number on, in order; at most so many. */
export function rowsFrom(device: string, seq: number, most: number): PromiseLike<Row[]> {
  return log.entries
    .where('[device+seq]')
    .between([device, seq], [device, Dexie.maxKey])
    .limit(most)
    .toArray();
}
