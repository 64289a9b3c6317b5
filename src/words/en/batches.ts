import { type Said, said, strong } from '#words/said.ts';

export const batches = {
  title: 'Batches',
  none: said('No batch yet. A batch is opened from a formula.'),
  open: 'Open a batch',
  sentence: (running: number, finished: number): Said =>
    said(
      strong(running === 0 ? 'No batch' : running === 1 ? 'One batch' : `${running} batches`),
      finished === 0 ? ' under way.' : ` under way, ${finished === 1 ? 'one' : finished} finished.`,
    ),
  stage: {
    'weigh-out': 'weigh-out',
    bench: 'at the bench',
    ferment: 'fermenting',
    hanging: 'hanging',
    finished: 'finished',
  },
  day: (day: number) => `day ${day}`,
  lot: (lot: string) => `lot ${lot}`,
};
