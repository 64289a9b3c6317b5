import { type Said, said, strong } from '#words/said.ts';

export const chamberAhead = {
  week: 'The last seven days',
  inBand: 'In band',
  inBandNote: (n: { temp: string; rh: string | null; known: string }) =>
    `${[n.temp, n.rh].filter(Boolean).join(', ')}; ${n.known} of the week is known`,
  swing: 'Widest swing in a day',
  swingNote: (rh: string | null) => (rh === null ? 'temperature' : `and ${rh} of humidity`),
  doors: 'Door openings a day',
  doorsNote: 'from fast falls of humidity; an estimate',
  corrected: 'Readings of checked instruments carry their offset here; the list below shows them as read.',
  title: 'What hangs here needs',
  sentence: (n: { low: string; high: string; now: string | null; water: string }): Said =>
    said(
      'Hold ',
      strong(`${n.low} to ${n.high}`),
      n.now === null ? '' : `, it was ${n.now}`,
      `; ${n.water} of water a day must go out.`,
    ),
  working: said(strong('Being worked out'), ': the humidity to hold, and how much water a day must go out.'),
  failed: 'What hangs here needs could not be worked out on this phone; readings and weights stand.',
  unknown: '…',
  wetted: (count: number) =>
    count === 1
      ? 'One batch is already drier than that: it would take water up. Part it from the fresh ones.'
      : `${count} batches are already drier than that: they would take water up. Part them from the fresh ones.`,
  table: 'The weeks ahead',
  columns: { when: 'When', humidity: 'Humidity to hold', water: 'Water a day' },
  when: (weeks: number) => (weeks === 0 ? 'now' : weeks === 1 ? 'in a week' : `in ${weeks} weeks`),
  carried: (amount: string, when: string): Said =>
    said(`The most this chamber has carried so far: ${amount} a day, measured in the rounds until ${when}.`),
  carriedNone: said('How much this chamber can carry is known once pieces were weighed twice in it.'),
  over: (by: string): Said => said(strong(`${by} a day more than it ever carried`), ': watch the humidity.'),
  more: {
    title: 'If more goes in',
    label: 'Fresh sausage to add',
    sentence: (n: { added: string; total: string }): Said =>
      said(`Another ${n.added} of water a day in its first week, `, strong(`${n.total} in all`), '.'),
    fits: said('It has carried as much before.'),
  },
  caution:
    'From estimates of loss and water activity, good to about 0.02: no verdict rests on them. A crust is felt, not computed.',
  source: (source: string) => `3 to 5 points under water activity × 100: ${source}`,
};
