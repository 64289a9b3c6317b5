/**
 * What can be told before any old line is read: the store holds as many rows as were acknowledged, and the chain ends with the
 * line that was acknowledged last, proved by its sum. A store that was emptied, cut short or put back to an older state fails
 * this, and is looked through whole before anything is appended. A line that went bad in the midst is found by the look-through
 * that follows, and whoever reads it before then proves it first.
 */
import type { Line } from '#record/line.ts';
import { log } from './database.ts';
import { currentDevice, rowsFrom } from './device.ts';
import { lineOf } from './row.ts';
import { readSentinel, type Witness } from './sentinel.ts';

/** A page that was killed between the store and the witness leaves the witness this far behind at most. */
const MOST_BEHIND = 200;

/** How the witness should stand, or null where the store must be looked through first. */
export async function glance(): Promise<Witness | null> {
  const witness = readSentinel();
  if (!witness || !(witness.lastSeq > 0)) return null;
  const { device, rows, tail } = await log.transaction('r', log.entries, log.devices, async () => ({
    device: await currentDevice(),
    rows: await log.entries.count(),
    tail: await rowsFrom(witness.device, witness.lastSeq, MOST_BEHIND),
  }));
  const lines = tail.map(lineOf);
  const [first] = lines;
  const last = lines.at(-1);
  const behind = tail.length - 1;
  const holds =
    device === witness.device &&
    first?.hash === witness.lastHash &&
    last !== undefined &&
    last !== null &&
    behind < MOST_BEHIND - 1 &&
    rows === witness.rows + behind &&
    lines.every((line, at) => at === 0 || follows(line, lines[at - 1]));
  if (!holds) return null;
  return {
    device,
    lastSeq: last.entry.seq,
    lastHash: last.hash,
    count: witness.count + behind,
    rows,
  };
}

function follows(line: Line | null, before: Line | null | undefined): boolean {
  return !!line && !!before && line.entry.prev === before.hash && line.entry.seq === before.entry.seq + 1;
}
