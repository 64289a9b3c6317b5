type Problem =
  | 'full'
  | 'connection-lost'
  | 'blocked'
  | 'newer-open'
  | 'not-checked-yet'
  | 'unreadable'
  | 'bad-draft'
  | 'other';

const problem: Readonly<Record<Problem, string>> = {
  full: 'This phone has no room left. The value is still here: free some space and try again, or pass it on as text.',
  'connection-lost':
    'The connection to the store on this phone was lost. The value is still here: try again.',
  blocked: 'Another tab holds the book open in an older form. Close it, then try again.',
  'newer-open': 'A newer version of the app is open in another tab. Reload this one.',
  'not-checked-yet': 'The book is still being checked. Try again in a moment.',
  unreadable: 'A line of the book on this phone cannot be read. Nothing was overwritten; see Kit.',
  'bad-draft': 'One of these values cannot be kept. Look at each field.',
  other: 'It was not saved. The value is still here: try again, or pass it on as text.',
};

type Saving =
  | { state: 'idle' }
  | { state: 'saving' }
  | { state: 'saved'; copies: 'both' | 'one' }
  | { state: 'not-saved'; problem: { code: Problem } };

type Mark = { state: 'saving' | 'saved' | 'not-saved'; text: string };

function saving(how: Saving): Mark | null {
  switch (how.state) {
    case 'idle':
      return null;
    case 'saving':
      return { state: 'saving', text: 'Saving' };
    case 'saved':
      return {
        state: 'saved',
        text: how.copies === 'both' ? 'Saved on this phone' : 'Saved on this phone, in one copy',
      };
    case 'not-saved':
      return { state: 'not-saved', text: problem[how.problem.code] };
  }
}

export const app = {
  name: 'Greenweight',
  nav: {
    label: 'Rooms',
    today: 'Today',
    batches: 'Batches',
    formulas: 'Formulas',
    chambers: 'Chambers',
    kit: 'Kit',
  },
  waiting: 'Opening the book',
  back: 'Back',
  cancel: 'Cancel',
  close: 'Close',
  working: 'working',
  keep: 'Keep it',
  change: 'Change it',
  strike: 'Strike it',
  notFound: {
    title: 'Nothing here',
    text: 'This address leads to nothing in your book. It may belong to another phone: bring its file over in Kit.',
    home: 'To Today',
  },
  error: {
    title: 'This page stopped',
    text: 'What was saved is still saved. Go back, or close the app and open it again.',
    again: 'Open it again',
  },
  problem,
  /** What stands beside a saving: nothing before it began. */
  saving,
  /** The same inside a sheet that closes when it is saved: "Saved" there would speak of what was saved before it opened. */
  unsaved: (how: Saving): Mark | null => (how.state === 'saved' ? null : saving(how)),
  passOn: {
    act: 'Pass on as text',
    copied: 'Copied. Paste it where it cannot be lost.',
    byHand: 'Mark the text and copy it.',
  },
  update: { text: 'A newer version is here.', act: 'Reload now' },
  invented: 'invented example',
  caution: {
    short:
      'The app computes from what is typed in. It does not make food safe. Local codes and licensed practice come first.',
    more: 'Hazards',
  },
};
