/** Writes a file to a place that the maker chooses in the browser's own dialog, and reads it back from there. */

type SavePicker = (options: { suggestedName: string }) => Promise<FileSystemFileHandle>;

function picker(): SavePicker | null {
  const { showSaveFilePicker } = window as { showSaveFilePicker?: SavePicker };
  return typeof showSaveFilePicker === 'function' ? showSaveFilePicker.bind(window) : null;
}

/** Not every browser has such a dialog; a download is the way there. */
export function canWriteToPlace(): boolean {
  return picker() !== null;
}

/** `cancelled`: the dialog was closed. `differs`: what was read back is not what was written. */
export async function writeToPlace({
  name,
  text,
}: {
  name: string;
  text: string;
}): Promise<'written' | 'cancelled' | 'differs' | 'failed'> {
  const pick = picker();
  if (!pick) return 'failed';
  try {
    const handle = await pick({ suggestedName: name });
    const writable = await handle.createWritable();
    await writable.write(text);
    await writable.close();
    const written = await (await handle.getFile()).text();
    return written === text ? 'written' : 'differs';
  } catch (error) {
    return error instanceof DOMException && error.name === 'AbortError' ? 'cancelled' : 'failed';
  }
}
