/** Why a line of a file was refused. */
const problems = {
  'too-large': 'The file is larger than any log of this app.',
  'too-many-lines': 'The file has more lines than any log of this app.',
  'not-ours': 'This is no backup of this app.',
  'newer-format': 'The file was written by a newer version of the app. Update the app, then take it in.',
  twice: 'the same entry stands in the file twice',
  'no-trailer': 'the end of the file is missing',
  'damaged-trailer': 'the end of the file is damaged',
  'not-as-written': 'the file holds other lines than its last line says',
  damaged: 'the line is not as it was written',
  'not-json': 'the line cannot be read',
  'too-long': 'the line is too long',
  'forbidden-key': 'the line holds a name that is not allowed',
  'not-an-entry': 'the line is no entry',
  'bad-body': 'the entry holds a value that cannot be',
} as const;

/** What a book that was lost asks of its file already at the first start. */
export const backupFile = {
  problem: (code: keyof typeof problems): string => problems[code],
  unlock: {
    label: 'The passphrase of this file',
    hint: 'The file is locked. Nothing is written yet.',
    act: 'Open it',
    tooShort: 'A passphrase has eight characters or more.',
    refused: 'It does not open: another passphrase, or a file that is not as it was written.',
  },
};
