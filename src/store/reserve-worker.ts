/**
 * Holds room on the disk by a file, and gives it back. The file is open as long as the page is: on a full disk none can be begun,
 * but one that is open can be cut. A sync access handle exists in workers alone.
 */
type SyncHandle = {
  getSize(): number;
  write(bytes: Uint8Array, options: { at: number }): number;
  truncate(size: number): void;
  flush(): void;
};
type SyncFile = FileSystemFileHandle & { createSyncAccessHandle(how: { mode: string }): Promise<SyncHandle> };

/** `free`: what is held is given back where the disk takes nothing more. `ask`: whether it takes a photo beside it; nothing is given back. */
export type ReserveTask = 'hold' | 'free' | 'ask';
/** Bytes that were held, and whether there is room now, by itself or made; or why nothing can be said. */
export type ReserveAnswer =
  | { readonly heldBytes: number; readonly room: 'there' | 'made' | 'none' }
  | { readonly problem: string };

/** Some ten thousand entries in both copies, and a backup of them. */
const RESERVE_BYTES = 8 * 1024 * 1024;
const CHUNK_BYTES = 65_536;
/** Four megabytes: a photo, what its store writes beside it, and some way to the end of the disk. */
const PHOTO_CHUNKS = 64;

self.onmessage = async ({ data }: MessageEvent<ReserveTask>) => {
  const answer: ReserveAnswer = await done(data).catch((error) => ({ problem: String(error) }));
  self.postMessage(answer);
};

let held: SyncHandle | null = null;

async function done(task: ReserveTask): Promise<ReserveAnswer> {
  held ??= await opened(task === 'hold');
  if (task === 'hold') fill(held);
  const heldBytes = held.getSize();
  if (task === 'ask') return { heldBytes, room: hasRoom(held, PHOTO_CHUNKS) ? 'there' : 'none' };
  if (task === 'hold' || hasRoom(held)) return { heldBytes, room: 'there' };
  held.truncate(0);
  held.flush();
  return { heldBytes, room: heldBytes > 0 && hasRoom(held) ? 'made' : 'none' };
}

/** Told by trying: what a browser says of the room that is left is no help. */
function hasRoom(handle: SyncHandle, chunks = 1): boolean {
  const at = handle.getSize();
  try {
    for (let chunk = 0; chunk < chunks; chunk++)
      if (handle.write(noise(), { at: at + chunk * CHUNK_BYTES }) !== CHUNK_BYTES) return false;
    handle.flush();
    return true;
  } catch {
    return false;
  } finally {
    handle.truncate(at);
  }
}

function noise(): Uint8Array<ArrayBuffer> {
  return crypto.getRandomValues(new Uint8Array(CHUNK_BYTES));
}

/**
 * Pages beside each other share it where the browser knows how; where it does not, the first one has it. On a full disk none can be
 * made, but one that was held before can be opened.
 */
async function opened(create: boolean): Promise<SyncHandle> {
  const root = await navigator.storage.getDirectory();
  const file = (await root.getFileHandle('reserve', { create })) as SyncFile;
  return file.createSyncAccessHandle({ mode: 'readwrite-unsafe' });
}

/** Noise, so that no disk can keep it in less room than it says. What a fuller disk took of it is given back. */
function fill(handle: SyncHandle): void {
  try {
    for (let at = handle.getSize(); at < RESERVE_BYTES; at += CHUNK_BYTES) {
      const chunk = noise();
      const written = handle.write(chunk, { at });
      if (written !== chunk.length) throw new Error(`no space: wrote ${written} of ${chunk.length} bytes`);
    }
  } catch (error) {
    handle.truncate(0);
    throw error;
  }
}
