/**
 * Writes the second copy: one file for each page that is open, whose name is this worker's name, at its end only, and on disk
 * before it answers. A sync access handle exists in workers alone.
 */
type SyncHandle = {
  getSize(): number;
  write(bytes: Uint8Array, options: { at: number }): number;
  truncate(size: number): void;
  flush(): void;
  close(): void;
};
type SyncFile = FileSystemFileHandle & { createSyncAccessHandle(): Promise<SyncHandle> };

export type JournalTask =
  | { readonly n: number; readonly task: 'append'; readonly text: string }
  | {
      readonly n: number;
      readonly task: 'gather';
      readonly into: string;
      readonly from: readonly string[];
      readonly text: string;
    };
export type JournalAnswer = { readonly n: number; readonly problem: string | null };

export const JOURNALS = 'journals';

let own: Promise<SyncHandle> | null = null;
let queue: Promise<unknown> = Promise.resolve();

self.onmessage = ({ data }: MessageEvent<JournalTask>) => {
  queue = queue.then(async () => {
    const answer: JournalAnswer = { n: data.n, problem: await done(data) };
    self.postMessage(answer);
  });
};

async function done(data: JournalTask): Promise<string | null> {
  try {
    if (data.task === 'gather') await gather(data);
    else {
      own ??= handleOf(self.name);
      write(await own, data.text);
    }
    return null;
  } catch (error) {
    return String(error);
  }
}

async function directory(): Promise<FileSystemDirectoryHandle> {
  return (await navigator.storage.getDirectory()).getDirectoryHandle(JOURNALS, { create: true });
}

async function handleOf(name: string): Promise<SyncHandle> {
  const file = await (await directory()).getFileHandle(name, { create: true });
  return (file as SyncFile).createSyncAccessHandle();
}

/** All of it and flushed, or nothing of it. */
function write(handle: SyncHandle, text: string): void {
  const bytes = new TextEncoder().encode(text);
  const at = handle.getSize();
  try {
    const written = handle.write(bytes, { at });
    if (written !== bytes.length) throw new Error(`no space: wrote ${written} of ${bytes.length} bytes`);
    handle.flush();
  } catch (error) {
    handle.truncate(at);
    throw error;
  }
}

/** Many small files into one: the new one is on disk before the first old one goes. */
async function gather({
  into,
  from,
  text,
}: {
  into: string;
  from: readonly string[];
  text: string;
}): Promise<void> {
  const handle = await handleOf(into);
  write(handle, text);
  handle.close();
  const files = await directory();
  for (const name of from) await files.removeEntry(name);
}
