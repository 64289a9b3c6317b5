import { type Said, said, strong } from '#words/said.ts';

export const absence = {
  title: 'Absence',
  note: 'what to set, what to expect at return',
  none: said('Say when you are away: the app says ', strong('what to set'), ' and what to expect at return.'),
  planned: (n: { from: string; to: string; days: number }): Said =>
    said(`Away for ${n.days} days, `, strong(`${n.from} to ${n.to}`), '.'),
  under: (n: { to: string }): Said =>
    said('Away until ', strong(n.to), '. What can wait is not listed in Today.'),
  returned: (n: { to: string }): Said =>
    said(`Back since ${n.to}: `, strong('weigh, and compare'), ' with what was expected.'),
  from: 'Leaving',
  to: 'Back',
  helper: 'Who looks in, and how to reach them',
  helperHint: 'Stays on this phone, and in its backups.',
  save: 'Plan it',
  order: 'You come back after you leave.',
  plan: 'Plan an absence',
  strike: 'Not going after all',
  strikeReason: 'plans changed',
  set: 'What to set before you leave',
  setTo: (n: { name: string; rh: string; now: string | null }) =>
    `${n.name}: humidity ${n.rh}${n.now === null ? '' : `, it is ${n.now} now`}`,
  setWhy: 'under the water activity expected at your return, so that nothing crusts while nobody looks',
  setNothing: 'Nothing hangs, so there is nothing to set.',
  weigh:
    'Weigh everything and fill the humidifier on the day you leave; ask your helper to read the air every other day.',
  expect: 'What to expect at return',
  expectRow: (window: string) => `~${window} lost, middle piece`,
  expectNote: (n: { chance: string | null; lot: string }) =>
    n.chance === null ? n.lot : `${n.lot} · may pass its target while you are away (${n.chance})`,
  early: 'likely',
  found: (n: { expected: string; found: string }) => `expected ${n.expected}, found ${n.found}`,
  foundNone: (expected: string) => `expected ${expected}, not weighed yet`,
  inside: 'within what was expected',
  less: 'less than expected: look at the humidity',
  more: 'more than expected: look for dry skins',
  caution: 'An estimate. A power cut, an empty humidifier or a door left open are not in it.',
};
