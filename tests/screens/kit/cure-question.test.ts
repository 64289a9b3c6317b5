import { describe, expect, it } from 'vitest';
import { cureQuestion } from '#screens/kit/cure-question.ts';

describe('percentages on a bag of curing salt', () => {
  // Labels quoted by sellers and makers: read second-hand.
  it.each([
    [6.25, 0],
    [6.25, 4],
    [6.25, 1],
    [5.67, 3.63],
    [5.88, 0],
    [0.6, 0],
    [0.55, 0],
    [0.5, 0],
    [0.4, 0],
  ])('%d %% nitrite with %d %% nitrate has been seen: no question', (nitritePct, nitratePct) => {
    expect(cureQuestion({ nitritePct, nitratePct })).toBeNull();
  });

  it.each([
    [0.0625, 'fraction', 6.25],
    [0.0588, 'fraction', 5.88],
    [0.006, 'fraction', 0.6],
    [62.5, 'tenfold', 6.25],
    [58.8, 'tenfold', 5.88],
    [0.625, 'tenfold', 6.25],
    [0.05, 'tenfold', 0.5],
  ] as const)('%d %% is asked about as a %s of %d %%', (nitritePct, code, meantPct) => {
    expect(cureQuestion({ nitritePct, nitratePct: 0 })).toEqual({ code, meantPct });
  });

  it.each([
    [0.9, 0, 'unusual'],
    [10, 0, 'unusual'],
    [99, 0, 'pure'],
    [0, 0, 'none'],
    [0, 98, 'nitrate-only'],
    [6.25, 40, 'nitrate-high'],
  ] as const)('%d %% nitrite with %d %% nitrate is asked about: %s', (nitritePct, nitratePct, code) => {
    expect(cureQuestion({ nitritePct, nitratePct })).toEqual({ code });
  });
});
