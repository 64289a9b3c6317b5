import { type Said, said, strong } from '#words/said.ts';

export const whatIf = {
  title: 'What if',
  newTitle: 'Rehearse a batch',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  newLine: 'A batch that does not exist yet',
  sentence: {
    working: said('Working it out.'),
    reaches: ({ target, days, day }: { target: string; days: string; day: string | null }): Said =>
      said(
        `In this air it should reach ${target}\u00a0% in `,
        strong(`about ${days} days`),
        day === null ? '.' : `, around ${day}.`,
      ),
    stops: ({ target, days, loss }: { target: string; days: string; loss: string }): Said =>
      said(
        strong(`It does not reach ${target}\u00a0%`),
        ` within ${days} days in this air; it stands near ~${loss}\u00a0% then.`,
      ),
    dries: said(strong('This air dries nothing'), ': it is as damp as the piece, or damper.'),
    there: ({ target }: { target: string }): Said => said(`It has lost ${target}\u00a0% already.`),
  },
  rim: {
    low: ({ aw }: { aw: string }) =>
      `The rim stays close to the rest: at most ~${aw} drier in water activity than the mean.`,
    watch: ({ aw, day }: { aw: string; day: string }) =>
      `The rim runs ahead: ~${aw} drier in water activity than the mean on day ${day}. Watch it.`,
    high: ({ aw, day }: { aw: string; day: string }) =>
      `The rim runs far ahead: ~${aw} drier in water activity than the mean on day ${day}. Expect a hard rim over a wet heart.`,
  },
  window: (low: string, high: string) =>
    `With a dial that may be off and no fan on the pieces: ${low} to ${high} days in eight of ten cases.`,
  windowOpen: (low: string) =>
    `With a dial that may be off and no fan on the pieces: ${low} days or more; in over one case of ten never.`,
  slices: 'Where the water is, from rim to heart',
  slice: ({ day, loss }: { day: string; loss: string }) => `day ${day}, ~${loss}\u00a0% lost`,
  aw: ({ rim, heart }: { rim: string; heart: string }) => `rim ~${rim}, heart ~${heart}`,
  sliceLabel: ({ day, rim, heart }: { day: string; rim: string; heart: string }) =>
    `Slice on day ${day}: water activity about ${rim} at the rim, ${heart} at the heart`,
  chart: {
    title: 'Loss over days',
    x: 'days since stuffing',
    y: 'loss, %',
    label: 'Loss over days in the air tried; thin, in the air as it is now.',
    columns: ['Day', 'In the air tried', 'As it is now'],
    value: (loss: string) => `~${loss}\u00a0%`,
    target: (loss: string) => `target ${loss}\u00a0%`,
    from: 'from here',
  },
  sliders: {
    title: 'Try',
    humidity: 'Humidity',
    temperature: 'Temperature',
    airSpeed: 'Air past the piece',
    diameter: 'Diameter',
    fat: 'Fat in the mix',
    target: 'Target loss',
    metresPerSecond: (value: string) => `${value}\u00a0m/s`,
  },
  unfit:
    'No mix comes to the last weighing in the air shown: check the hygrometer and how the air moves first. The days and the rim told here are not to be relied on.',
  fitted: 'Fitted to the last weighing of the middle piece; the air tried begins there.',
  note: 'Computed ring by ring from how water moves in meat: off by 5 to 6 points of loss on real pieces whose air nobody measured. For comparing one air with another, never for a date or a release.',
  failed: 'This could not be worked out here.',
  other: 'Rehearse a batch that does not exist yet',
};
