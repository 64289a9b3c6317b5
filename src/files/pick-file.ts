/** A file that somebody picked, read only when its size is known to be bearable. */

export type PickedFile =
  | { ok: true; name: string; bytes: Uint8Array<ArrayBuffer> }
  | { ok: false; code: 'empty' | 'too-large' | 'unreadable' };

export async function readPicked(file: File, { mostBytes }: { mostBytes: number }): Promise<PickedFile> {
  if (file.size === 0) return { ok: false, code: 'empty' };
  if (file.size > mostBytes) return { ok: false, code: 'too-large' };
  try {
    return { ok: true, name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) };
  } catch {
    return { ok: false, code: 'unreadable' };
  }
}

/** UTF-8, or null when it is not: text that was damaged on the way is not shown as if it were whole. */
export function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
