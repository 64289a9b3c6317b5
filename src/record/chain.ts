/** The chain of each device: every line holds the hash of that device's line before, so that what is missing can be told. */
import type { Line } from './line.ts';

export type ChainFault =
  /** Lines that were written are not here. */
  | { readonly code: 'gap'; readonly device: string; readonly fromSeq: number; readonly toSeq: number }
  /** A line follows another than the one that is here. */
  | { readonly code: 'broken'; readonly device: string; readonly seq: number }
  /** Two lines of one device carry one number: a copied phone, or a phone put back to an older state. */
  | { readonly code: 'fork'; readonly device: string; readonly seq: number; readonly lines: number };

/** The last line of a device, or of each branch where it forked. */
export type Head = { readonly device: string; readonly seq: number; readonly hash: string };

export type Chains = { readonly faults: readonly ChainFault[]; readonly heads: readonly Head[] };

export function checkChains(lines: readonly Line[]): Chains {
  const faults: ChainFault[] = [];
  const heads: Head[] = [];
  for (const [device, own] of grouped(lines, (line) => line.entry.device)) {
    const bySeq = grouped(own, (line) => line.entry.seq);
    const followed = new Set(own.map((line) => line.entry.prev));
    let lastSeq = 0;
    for (const seq of [...bySeq.keys()].sort((a, b) => a - b)) {
      const here = bySeq.get(seq) ?? [];
      if (seq > lastSeq + 1) faults.push({ code: 'gap', device, fromSeq: lastSeq + 1, toSeq: seq - 1 });
      if (here.length > 1) faults.push({ code: 'fork', device, seq, lines: here.length });
      const before = new Set(seq === 1 ? [''] : bySeq.get(seq - 1)?.map((line) => line.hash));
      const follows = (line: Line): boolean => before.has(line.entry.prev);
      if ((seq === 1 || lastSeq === seq - 1) && !here.every(follows))
        faults.push({ code: 'broken', device, seq });
      lastSeq = seq;
    }
    for (const { hash, entry } of own) {
      if (!followed.has(hash)) heads.push({ device, seq: entry.seq, hash });
    }
  }
  return { faults, heads: heads.sort(inChainOrder) };
}

/** Device, then number, then hash: one order for the same lines wherever they are put in order. */
export function inChainOrder(a: Head, b: Head): number {
  return compare(a.device, b.device) || a.seq - b.seq || compare(a.hash, b.hash);
}

export function chainOrder(lines: readonly Line[]): Line[] {
  return [...lines].sort((a, b) => inChainOrder({ ...a.entry, hash: a.hash }, { ...b.entry, hash: b.hash }));
}

function grouped<K>(lines: readonly Line[], keyOf: (line: Line) => K): Map<K, Line[]> {
  const groups = new Map<K, Line[]>();
  for (const line of lines) {
    const group = groups.get(keyOf(line));
    if (group) group.push(line);
    else groups.set(keyOf(line), [line]);
  }
  return groups;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
