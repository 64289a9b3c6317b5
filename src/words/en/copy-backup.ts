/** Said where the book cannot be opened, and its second copy may still be read. */
export const copyBackup = {
  text: 'What was saved may still be readable in the second copy on this phone. A backup of it can be sent to another device from here.',
  read: 'Read the second copy',
  hand: (entries: number) => `Send a backup of ${entries === 1 ? 'one entry' : `${entries} entries`}`,
  fileName: (when: string) => `greenweight-second-copy-${when}.txt`,
  handed: 'Handed over. Look whether the file arrived: without room this phone may not have kept it.',
  none: 'The second copy cannot be read at present. Free some space and try again; nothing was changed.',
  failed: 'It was not handed over. Try again.',
};
