import { type Said, said, strong } from '#words/said.ts';

export const batch = {
  line: (lot: string, rules: string) => `lot ${lot} · ${rules}`,
  sentence: (waits: string): Said => said('Next: ', strong(waits), '.'),
  nothing: said('Nothing is due.'),
  open: 'Go there',
  parts: {
    'weigh-out': 'Weigh-out',
    bench: 'At the bench',
    stuffing: 'Pieces',
    ferment: 'Ferment',
    hanging: 'Hanging',
    record: 'Record',
    release: 'Decide',
  },
  notes: {
    'weigh-out': (done: number, of: number) => (of === 0 ? 'weigh the meat first' : `${done} of ${of} lines`),
    bench: (done: number, of: number) => `${done} of ${of} steps`,
    stuffing: (count: number, total: string) => (count === 0 ? 'none yet' : `${count}, ${total} green`),
    ferment: { before: 'not stuffed yet', running: 'running', ended: 'ended', none: 'none planned' },
    hanging: (up: number, down: number) => (down === 0 ? `${up} up` : `${up} up, ${down} taken down`),
    notHung: 'not hung yet',
    undecided: 'not decided yet',
    record: (entries: number) => (entries === 1 ? 'one entry' : `${entries} entries`),
  },
  learn: 'To make the next one better',
  rail: (count: number) => (count === 1 ? 'One piece on the rail' : `${count} pieces on the rail`),
  unknown:
    'Some entries come from a newer version of the app and cannot be read here. No verdict is complete until this app is updated.',
  rivals:
    'Two corrections of one entry stand side by side. Look the record through and strike the wrong one.',
  note: {
    act: 'Write a note',
    title: 'Note',
    label: 'What is worth remembering',
    save: 'Save',
    needed: 'Write something first.',
  },
  plan: {
    title: 'Plan',
    ferment: 'ferment at',
    ph: 'target pH',
    dry: 'dry at',
    humidity: 'humidity',
    diameter: 'diameter',
    loss: 'target loss',
  },
};
