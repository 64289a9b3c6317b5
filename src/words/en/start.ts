export const start = {
  lost: {
    title: 'The book on this phone is gone',
    text: (missing: number) =>
      `This phone knows that it held ${missing === 1 ? 'one entry' : `${missing} entries`}, and nothing of them is left: the browser or somebody cleared its storage. This is not a fresh start. Bring your last file back.`,
    choose: 'Choose the file',
    chosen: (fresh: number, lines: number) =>
      `The file holds ${lines} entries; ${fresh} would be brought back.`,
    refused: (line: number, reason: string) =>
      `The file is damaged at line ${line}: ${reason}. What proves itself can still be brought back.`,
    takeIn: 'Bring them back',
    anew: 'There is no file: begin anew',
    anewSure: 'Begin anew, and keep it on record that entries are missing',
    failed: 'It could not be brought back. Try again.',
    other: 'This is not a file of this book.',
  },
  newerOpen: {
    title: 'A newer version is open',
    text: 'Another tab has opened the book with a newer version of the app. Reload this one; nothing is lost.',
    act: 'Reload',
  },
  blocked: {
    title: 'Another tab holds the book',
    text: 'Close the other tabs of this app, then reload.',
    act: 'Reload',
  },
  cannotOpen: {
    title: 'The book cannot be opened',
    text: 'The store of this browser does not answer. Close the browser and open it again; what was saved is still there if the store is.',
    act: 'Try again',
    full: 'This phone has no room left, and without any the book cannot be opened. Delete something else on it, then try again.',
    copyText:
      'If it still does not open, the second copy on this phone can be made the book: every entry in it is brought over.',
    fromCopy: 'Open from the second copy',
  },
  told: {
    restored: (count: number) =>
      count === 1
        ? 'One entry was restored from the second copy.'
        : `${count} entries were restored from the second copy.`,
    recopied: (count: number) =>
      count === 1
        ? 'One entry was written into the second copy anew.'
        : `${count} entries were written into the second copy anew.`,
    missing: (count: number) =>
      count === 1 ? 'One entry is missing on this phone.' : `${count} entries are missing on this phone.`,
    damaged: (count: number) =>
      count === 1 ? 'One entry on this phone was damaged.' : `${count} entries on this phone were damaged.`,
    'copy-damaged': (_count: number) => 'The second copy was damaged; the first is whole.',
    gap: (_count: number) => 'A run of entries has a gap.',
    broken: (_count: number) => 'A chain of entries is broken.',
    fork: (_count: number) => 'Two runs of entries carry the same numbers; both are kept.',
    'clock-behind': (_count: number) => 'The clock of this phone has gone back since the last entry.',
    'began-anew': (_count: number) => 'This book was begun anew after a loss.',
    'taken-in': (count: number) => `${count} entries were taken in from a file.`,
  },
  toKeeping: 'See “Backup and other phones”',
  seen: 'Seen',
  oneCopy: 'The second copy on this phone cannot be written. A backup matters all the more.',
  room: {
    low: 'Little room is left on this phone. Photos stop first; readings go on. Free some space.',
    used: 'The room held back for readings is in use: this phone is probably full. Free some space, and take a backup.',
  },
  connectionLost:
    'The store of this browser does not answer. What you type stays here; try again in a moment.',
};
