import { type Said, said, strong } from '#words/said.ts';

type Problem =
  | 'unreadable'
  | 'no-room'
  | 'not-kept'
  | 'full'
  | 'connection-lost'
  | 'blocked'
  | 'newer-open'
  | 'not-checked-yet'
  | 'bad-draft'
  | 'other';

type Photographing = { state: 'idle' | 'working' | 'kept' } | { state: 'not-kept'; code: Problem };

/** Whatever became of the photo, the reading was saved before it. */
function problem(code: Problem): string {
  switch (code) {
    case 'unreadable':
      return 'This picture cannot be read here, so there is no photo. What you wrote down is saved.';
    case 'no-room':
    case 'full':
      return 'There is no room for photos on this phone: what is left is kept for readings. What you wrote down is saved.';
    default:
      return 'The photo was not kept. What you wrote down is saved; take the photo again.';
  }
}

export const photos = {
  title: 'Photos',
  note: 'what was seen, beside what was read',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  sentence: (count: number): Said =>
    count === 0
      ? said('No photo of this batch yet. ', strong('Write the reading down first'), ', then photograph it.')
      : said(
          strong(count === 1 ? 'One photo' : `${count} photos`),
          ' of this batch. The newest stand first.',
        ),
  of: 'What is on it?',
  belongs: (reading: string) => `It will stand beside what was last written down there: ${reading}.`,
  ofNone: 'Nothing was read or done in this batch yet: a photo belongs to something written down.',
  reading: (what: string, at: string) => `${what}, ${at}`,
  take: 'Take the photo',
  takePiece: (number: number) => `Photograph piece ${number}`,
  batch: 'The batch',
  piece: (number: number) => `Piece ${number}`,
  caption: (at: string, what: string) => (what ? `${at} · ${what}` : at),
  alt: (subject: string, at: string) => `Photo: ${subject}, ${at}`,
  loading: 'Fetching the photo',
  missing: 'This photo is not on this phone. Its entry stands; the picture may be in a file of photos.',
  damaged: 'This photo is damaged on this phone and is not shown. Its entry stands.',
  mark: (how: Photographing): { state: 'saving' | 'saved' | 'not-saved'; text: string } | null => {
    switch (how.state) {
      case 'idle':
        return null;
      case 'working':
        return { state: 'saving', text: 'Making the photo small' };
      case 'kept':
        return { state: 'saved', text: 'The photo is on this phone, without its place' };
      case 'not-kept':
        return { state: 'not-saved', text: problem(how.code) };
    }
  },
  side: 'The same piece before',
  sideNone: 'No photo of this piece yet.',

  keeping: {
    title: 'Photos',
    text: 'A backup holds every entry, and of each photo its sum; the pictures go out here, in a file of their own.',
    none: 'No photo was taken yet.',
    counts: (all: number, here: number): Said =>
      all === here
        ? said(
            all === 1 ? 'One photo, and it is on this phone.' : `${all} photos, all of them on this phone.`,
          )
        : said(
            `${all === 1 ? 'One photo' : `${all} photos`} in the record; `,
            strong(`${all - here} not on this phone.`),
          ),
    unread: 'The store of the photos cannot be read. The log is not touched by it.',
    give: (from: number, to: number, of: number) =>
      from === 1 && to === of ? 'Save the photos as a file' : `Save photos ${from} to ${to}`,
    damaged: (count: number) =>
      count === 1 ? 'One photo is damaged and not in it.' : `${count} photos are damaged and not in it.`,
    failed: 'The file of photos could not be made.',
    handed: {
      shared: 'Handed to what you chose.',
      'share-cancelled': 'It was not handed over.',
      'download-begun': 'Handed to the downloads of this phone. Move it to another place.',
      'not-possible': 'This browser cannot hand out a file.',
    },
    take: 'Take in a file of photos',
    taken: (n: { added: number; here: number; strange: number }) =>
      `${n.added} taken in, ${n.here} already here, ${n.strange} of another book and left.`,
    notBox: 'This is no file of photos of this app.',
    tooLarge: 'The file is larger than any file of photos of this app.',
    noRoom: 'There is no room for more photos on this phone.',
    fileName: (day: string, part: number) => `greenweight-photos-${day}-${part}.zip`,
  },
};
