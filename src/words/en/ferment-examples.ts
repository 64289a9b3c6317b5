import { type Said, said, strong } from '#words/said.ts';

/** What was published beside the limits of the ferment, next to what this app makes of it. */
export const fermentExamples = {
  title: 'Published examples',
  sentence: (agree: number, all: number): Said =>
    said(
      strong(`${agree} of ${all} worked examples`),
      ' come out as they were published. Each number says where it stood, and how it came to be known.',
    ),
  link: 'Published examples',
  back: 'Where the numbers come from',
  worked: 'Worked examples of degree-hours',
  step: (degrees: string, hours: string) => `${hours} at ${degrees}`,
  rules: { US: 'United States', CA: 'Canada' },
  published: 'published',
  here: 'here',
  passes: 'within limit',
  fails: 'deviation',
  of: (sum: string, limit: string, verdict: string) => `${sum} of ${limit}, ${verdict}`,
  hoursTitle: { US: 'Longest time to pH 5.3, United States', CA: 'Longest time to pH 5.3, Canada' },
  hoursColumns: ['Room', 'Published, h', 'Here, h'],
  hoursNote: {
    US: 'Rounded down, as the form prints them.',
    CA: 'The printed hours seem to rest on 60 °F exactly, the sums on 15.6 °C: the shorter is given here, up to half an hour below the print.',
  },
  metersTitle: 'Two electrodes, in mV',
  meterColumns: ['Near 7, near 4', 'Offset', 'Slope', 'Here'],
  slopesTitle: 'Ideal slope of an electrode, mV per pH',
  slopeColumns: ['Temperature', 'Quoted', 'Here'],
  buffersTitle: (names: string) => `pH of the buffers ${names}`,
  bufferColumn: 'Temperature',
  freezing: 'The tables of freezing stand with the limits.',
};
