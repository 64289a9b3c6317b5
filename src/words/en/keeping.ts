import { type Said, said, strong } from '#words/said.ts';
import { backupFile } from './backup-file.ts';

function some(count: number, one: string, many: string): string {
  return count === 1 ? `one ${one}` : `${count} ${many}`;
}
const entries = (count: number) => some(count, 'entry', 'entries');

export const keeping = {
  title: 'Backup and other phones',
  never: (count: number): Said =>
    said(
      strong(`All ${entries(count)} are on this phone only.`),
      ' A lost or broken phone takes them with it.',
    ),
  exposed: (count: number, last: string): Said =>
    said(
      strong(`${count === 1 ? 'One entry is' : `${count} entries are`} on this phone only.`),
      ` Last backed up ${last}.`,
    ),
  covered: (last: string): Said => said(`Every entry is in the backup of ${last}.`),
  empty: said('There is nothing to back up yet.'),

  backUp: {
    act: 'Back up now',
    making: 'Writing the file and reading it back',
    ready: 'The backup is ready',
    readBack: (count: number, size: string) => `It was read back: ${entries(count)}, ${size}.`,
    left: (count: number) => `${entries(count)} could not be read and are not in it.`,
    sum: (sum: string) => `Sum ${sum}`,
    where: 'Put it somewhere else than on this phone.',
    share: 'Share it',
    save: 'Save as a file',
    failed: 'The file did not read back as the log. No backup was made; try again.',
    notHanded: 'It was not handed over. The backup does not count until it is.',
    done: {
      shared: 'Backed up: handed to what you chose.',
      written: 'Backed up: written, and read back from the file.',
      downloaded: 'Handed to the downloads of this phone. Move it to another place.',
    },
    notNoted: 'The file was handed over, but this could not be noted here.',
    fileName: (day: string) => `greenweight-log-${day}.txt`,
    sealedName: (name: string) => name.replace(/\.txt$/, '-locked.txt'),
    sealed:
      'The file is locked, and was opened again with the passphrase. Without it nobody reads it, you neither.',
    lock: {
      label: 'Passphrase, if the file is to be locked',
      hint: 'Eight characters or more. A lost passphrase is a lost backup: keep an unlocked file in another place too.',
      act: 'Lock the file',
      tooShort: 'Eight characters or more.',
      refused: 'It could not be locked. The file is as it was.',
    },
  },

  giveOut: {
    title: 'Everything as a table',
    text: 'For a spreadsheet, an inspector or another program: every entry with its value, when it was true, when it was written, by whom, and what struck it. It is for reading; only a backup can be taken in again.',
    csv: (decimal: '.' | ',') => (decimal === ',' ? 'Table (CSV, decimal comma)' : 'Table (CSV)'),
    json: 'Data (JSON)',
    failed: 'The file could not be written.',
    left: (count: number) => `${entries(count)} could not be read and are not in it.`,
    handed: {
      shared: (count: number) => `${entries(count)} handed to what you chose.`,
      'share-cancelled': (_count: number) => 'It was not handed over.',
      'download-begun': (count: number) => `${entries(count)} handed to the downloads of this phone.`,
      'not-possible': (_count: number) => 'This browser cannot hand out a file.',
    },
    fileName: (day: string, form: 'csv' | 'json') => `greenweight-entries-${day}.${form}`,
  },

  takeIn: {
    title: 'Take in another file',
    text: 'A backup of this phone, or of another one in the workshop. Nothing here is replaced: what is missing here is added.',
    choose: 'Choose a file',
    reading: 'Reading the file. Nothing is written yet.',
    tooLarge: 'The file is larger than any log of this app. Nothing was read.',
    unreadable: 'The file could not be opened.',
    unlock: backupFile.unlock,
    planTitle: 'What would happen',
    from: (made: string, count: number, build: string) => `Made ${made}, ${entries(count)}, build ${build}.`,
    noHeader: 'The first line of the file cannot be read, so that it is not known when it was made.',
    fresh: 'New here',
    here: 'Already here',
    refused: 'Refused',
    setAside: 'Set aside',
    twins: 'Here with other contents',
    twinsNote: 'What is here stays.',
    unknown: 'Of a newer version',
    unknownNote: 'Kept and passed on untouched; what they touch shows no reading until the app is updated.',
    faults: (count: number) =>
      `The log in this file has ${some(count, 'gap or break', 'gaps or breaks')} of its own. What is there is whole.`,
    line: (line: number, problem: string) => (line === 0 ? problem : `Line ${line}: ${problem}`),
    more: (count: number) => `and ${some(count, 'line', 'lines')} more`,
    act: (count: number) => `Take in ${entries(count)}`,
    nothing: 'Nothing new in this file.',
    notWhole: 'This file is not as it was written, so nothing of it was taken in.',
    recover: 'Recover what can be proved',
    recoverText:
      'If this is the only backup you have: every line carries its own sum, and those that hold can be taken in. The rest is set aside.',
    recoverTitle: 'What can be recovered',
    done: (count: number) =>
      `${count === 1 ? 'One entry was' : `${count} entries were`} taken in and saved on this phone.`,
    another: 'Choose another file',
  },

  problem: backupFile.problem,

  health: {
    title: 'How it is kept on this phone',
    persisted: 'Will the browser keep it?',
    persistedYes: 'promised',
    persistedNo: 'not promised',
    persistedNote: 'Without its promise it may be deleted when room is short, or after weeks without use.',
    persistedUnknown: 'cannot be asked in this browser',
    ask: 'Ask the browser to keep it',
    asked: 'The browser did not promise. Adding the app to the home screen often changes that.',
    askedYes: 'The browser promised to keep it.',
    copies: 'Copies on this phone',
    copiesTwo: 'two, and equal',
    copiesBehind: (count: number) => `two; ${entries(count)} wait for the second`,
    copiesOne: 'one: this browser cannot keep a second',
    copiesNote: 'Both are on this phone, so neither is a backup.',
    entries: 'Entries',
    entriesNone: 'the store cannot be read',
    damaged: 'Entries that cannot be read',
    chain: 'Chains',
    chainWhole: 'whole',
    chainFaults: (count: number) => some(count, 'gap or break', 'gaps or breaks'),
    clock: 'Steps of the clock',
    clockNone: 'none seen',
    clockSteps: (count: number) => `the clock went back ${some(count, 'time', 'times')}`,
    storage: 'Storage used',
    storageOf: (used: string, quota: string) => `${used} of about ${quota}`,
    storageNote: 'What a browser says of its room is an estimate, and the phone may be fuller.',
    unknown: 'not known in this browser',
    check: 'Check now',
    checking: 'Checking',
    checked: 'Checked at the start of this page.',
    checkedNow: 'Checked just now.',
    history: 'What the checks found',
    historyNone: 'Nothing was found amiss so far.',
  },
  size: { kB: 'kB', MB: 'MB', GB: 'GB' },
};
