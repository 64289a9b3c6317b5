import { type Said, said, strong } from '#words/said.ts';

/** "piece 3", "pieces 1, 3 and 4", "all 8". */
function pieces(numbers: readonly number[], of: number): string {
  const last = numbers.at(-1);
  if (numbers.length <= 1) return `piece ${last ?? ''}`;
  if (numbers.length === of) return of === 2 ? 'both pieces' : `all ${of} pieces`;
  return `pieces ${numbers.slice(0, -1).join(', ')} and ${last}`;
}

export const hangingPace = {
  title: 'Pace and air',
  level: {
    'too-fast': (numbers: readonly number[], of: number) => `Drying too fast: ${pieces(numbers, of)}`,
    watch: (numbers: readonly number[], of: number) => `Fast, keep an eye on: ${pieces(numbers, of)}`,
    'too-slow': (numbers: readonly number[], of: number) => `Drying too slowly: ${pieces(numbers, of)}`,
    plateau: (numbers: readonly number[], of: number) =>
      `Hardly losing any more, short of target: ${pieces(numbers, of)}`,
  },
  reason: {
    'skin-gives-too-much': ({ rate, most, mm }: { rate: string; most: string; mm: string }) =>
      `Hung, it began to lose ~${rate}\u00a0% a day; at ${mm}\u00a0mm more than ${most}\u00a0% draws on the rim faster than the heart sends after.`,
    'skin-closes': 'It slows down at once, as under a skin that has closed.',
    'ahead-of-diameter': ({ lost, low, high, mm }: { lost: string; low: string; high: string; mm: string }) =>
      `It has lost ${lost}\u00a0%; at ${mm}\u00a0mm in sound air ${low} to ${high}\u00a0% is to be expected by now.`,
    'behind-diameter': ({ lost, low, high, mm }: { lost: string; low: string; high: string; mm: string }) =>
      `It has lost ${lost}\u00a0%; at ${mm}\u00a0mm ${low} to ${high}\u00a0% is to be expected by now.`,
    'air-far-below-piece': ({ points }: { points: string }) =>
      `The air lies ~${points} points under the piece's own water activity; 3 to 5 are usual.`,
    'slows-early': 'Its curve bends over sooner than its diameter explains.',
    tail: 'It loses less than 0.1\u00a0% a day.',
  },
  do: {
    damper: ({ rh, days }: { rh: string; days: string }): Said =>
      said(strong(`Set ~${rh}\u00a0% for ${days}`), ', or slow the air on it.'),
    bag: said(
      strong('Press it'),
      ': hard rim over a soft heart? Bag it for a week to even out, then hang it again.',
    ),
    drier: ({ rh }: { rh: string }): Said =>
      said(strong(`Set ~${rh}\u00a0%`), ', or let more air move past it.'),
    move: said(
      strong('Let more air move past it'),
      ': it hangs in air dry enough, or the humidity shown is not what it hangs in.',
    ),
    plateau: ({ rh }: { rh: string }): Said =>
      said(
        strong(`Set ~${rh}\u00a0%`),
        ', accept a lower target, or cut one and look: at this humidity it comes to rest short of it.',
      ),
    accept: said(
      strong('Accept a lower target, or cut one and look'),
      ': no air down to 60\u00a0% would bring it there.',
    ),
  },
  days: (count: number) => (count === 1 ? 'a day' : `${count} days`),
  after: (day: string) => `Weigh again on ${day}.`,
  caution:
    'Told from weights: it says look. Whether there is a rim, the thumb and the knife say; a hard rim can hide a wet heart.',
  air: {
    title: 'Humidity that the weights speak for',
    value: (low: string, high: string) => `${low} to ${high}`,
    shown: (shown: string) => `shown: ${shown}\u00a0%`,
    suspect: (isDrier: boolean): Said =>
      said(
        strong('Sensor or airflow suspect'),
        isDrier
          ? ': the pieces dry as if the air were drier than shown. '
          : ': the pieces dry as if the air were damper than shown. ',
        'Check the hygrometer over wet salt, and how the air moves between the pieces.',
      ),
    note: 'An estimate from how fast they lose weight; a fan on the pieces looks the same as dry air.',
  },
  score: ({ held, count }: { held: number; count: number }): string =>
    `Of the last ${count} windows that this app would have given for this chamber, ${held} held; four in five should.`,
  earlier: (count: number): string =>
    count === 1
      ? 'One finished batch of this chamber and calibre counts in.'
      : `${count} finished batches of this chamber and calibre count in.`,
  noEarlier: 'No finished batch of this chamber and calibre yet: diameter, mix and air alone count.',
  failed: 'What is to be expected could not be worked out on this phone; weights and losses stand.',
  links: { target: 'What the target means', rehearse: 'What if' },
};
