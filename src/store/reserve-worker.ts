/**
 * Holds room on the disk by a file, and gives it back. The file is open as long as the page is: on a full disk no file can be
 * opened, but one that is open can be cut. A sync access handle exists in workers alone.
 */
type SyncHandle = {
  getSize(): number;
  write(bytes: Uint8Array, options: { at: number }): number;
  truncate(size: number): void;
  flush(): void;
};
type SyncFile = FileSystemFileHandle & { createSyncAccessHandle(how: { mode: string }): Promise<SyncHandle> };

export type ReserveTask = 'hold' | 'free';
/** Bytes that are held now, or why they cannot be. */
export type ReserveAnswer = { readonly heldBytes: number } | { readonly problem: string };

/** Some ten thousand entries in both copies, and a backup of them. */
const RESERVE_BYTES = 8 * 1024 * 1024;
const CHUNK_BYTES = 65_536;

self.onmessage = async ({ data }: MessageEvent<ReserveTask>) => {
  const answer: ReserveAnswer = await done(data).catch((error) => ({ problem: String(error) }));
  self.postMessage(answer);
};

let held: SyncHandle | null = null;

async function done(task: ReserveTask): Promise<ReserveAnswer> {
  if (task === 'hold') {
    held ??= await opened();
    fill(held);
  }
  const heldBytes = held?.getSize() ?? 0;
  if (task === 'free') held?.truncate(0);
  held?.flush();
  return { heldBytes };
}

/** Pages beside each other share it where the browser knows how; where it does not, the first one has it. */
async function opened(): Promise<SyncHandle> {
  const root = await navigator.storage.getDirectory();
  const file = (await root.getFileHandle('reserve', { create: true })) as SyncFile;
  return file.createSyncAccessHandle({ mode: 'readwrite-unsafe' });
}

/** Noise, so that no disk can keep it in less room than it says. What a fuller disk took of it is given back. */
function fill(handle: SyncHandle): void {
  try {
    for (let at = handle.getSize(); at < RESERVE_BYTES; at += CHUNK_BYTES) {
      const chunk = crypto.getRandomValues(new Uint8Array(CHUNK_BYTES));
      const written = handle.write(chunk, { at });
      if (written !== chunk.length) throw new Error(`no space: wrote ${written} of ${chunk.length} bytes`);
    }
  } catch (error) {
    handle.truncate(0);
    throw error;
  }
}
