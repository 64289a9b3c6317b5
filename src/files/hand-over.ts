/** Hands a file to whoever is to have it: by the share sheet where there is one, else as a download. */

export type HandedOver =
  | 'shared'
  /** The share sheet was closed again: nothing left the app. */
  | 'share-cancelled'
  /** Given to the browser to save; whether it was kept, no page is told. */
  | 'download-begun'
  | 'not-possible';

export type OutgoingFile = {
  readonly name: string;
  readonly mime: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
};

/** Long enough for a slow phone to have read the file, and for the question where to save it. */
const KEPT_MS = 60_000;

/** To be called from a press: without one, no browser opens its share sheet. */
export async function handOver({ name, mime, content }: OutgoingFile): Promise<HandedOver> {
  const file = new File([content], name, { type: mime });
  const data: ShareData = { files: [file] };
  if (typeof navigator.share === 'function' && navigator.canShare?.(data)) {
    try {
      await navigator.share(data);
      return 'shared';
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'share-cancelled';
    }
  }
  return download(file);
}

/** As a download even where there is a share sheet. */
export function handDown({ name, mime, content }: OutgoingFile): HandedOver {
  return download(new File([content], name, { type: mime }));
}

function download(file: File): HandedOver {
  let address: string;
  try {
    address = URL.createObjectURL(file);
  } catch {
    return 'not-possible';
  }
  const link = document.createElement('a');
  link.href = address;
  link.download = file.name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), KEPT_MS);
  return 'download-begun';
}
