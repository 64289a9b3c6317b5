import { expect, test } from 'vitest';
import type { Draft } from '#record/entry.ts';
import { en as words } from '#words/en.ts';
import { unsavedText } from '../../src/app/unsaved-text.ts';

test('what could not be saved is passed on whole: every value, as it was typed', () => {
  const at = { atMs: Date.UTC(2024, 0, 8, 7), zone: '+01:00', by: 'HK' };
  const drafts: Draft[] = [
    {
      ...at,
      kind: 'weighed',
      subject: 'piece:a',
      refs: ['batch:b'],
      body: { grossG: 812.5, stage: 'round', typed: { grossG: { text: '812,5', unit: 'g' } } },
    },
    {
      ...at,
      kind: 'ph-read',
      subject: 'batch:b',
      body: { ph: 5.2, sample: 'mix', method: 'meter', doubted: false, kept: ['ph'] },
    },
  ];
  expect(unsavedText(drafts, words)).toBe(
    [
      'piece weighed, 8 January 2024, 08:00, HK: on the scale 812,5 g, stage round (piece:a)',
      'pH read, 8 January 2024, 08:00, HK: pH 5.2, sample mix, by meter, doubted false, kept ["ph"] (batch:b)',
    ].join('\n'),
  );
});
