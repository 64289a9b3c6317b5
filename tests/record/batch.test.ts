import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Batch, batch } from '#record/batch.ts';
import type { Entry } from '#record/entry.ts';
import { readFile } from '#record/file.ts';
import { piece } from '#record/piece.ts';
import { lots, place, scales } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { HOUR_MS, idOf, newer, START_MS, writer } from './make.ts';

const file = readFile(readFileSync('fixtures/batches/demo-salame.txt', 'utf8'));
const state = JSON.parse(readFileSync('fixtures/batches/demo-salame.json', 'utf8'));
const entries: readonly Entry[] = file.lines.map(({ entry }) => entry);
const ID: SubjectId = 'batch:demo-salame';

function folded(all: readonly Entry[]): Batch {
  const made = batch(
    ID,
    all.filter(({ subject, refs }) => subject === ID || refs.includes(ID)),
  );
  if (!made) throw new Error('no batch was opened');
  return made;
}

describe('a whole log', () => {
  it('adds up to the state that was worked out by hand', () => {
    expect(file.problems).toEqual([]);
    const { id, stage, leanG, fatG, weighedOut, steps, ph, pieces, unknown } = folded(entries);
    const { mass, decimal, ruleSet } = place(entries);
    expect({
      about: state.about,
      id,
      stage,
      leanG,
      fatG,
      weighedOutG: Object.fromEntries([...weighedOut].map(([line, { body }]) => [line, body.massG])),
      steps: steps.map(({ kind }) => kind),
      ph: ph.map(({ body }) => body.ph),
      pieces: pieces.map(({ number, greenG, weighings, status }) => ({
        number,
        greenG,
        weighingsG: weighings.map(({ netG }) => netG),
        status,
      })),
      unknown,
      place: { mass, decimal, ruleSet },
      lots: lots(entries).length,
      scales: scales(entries).length,
    }).toEqual(state);
  });

  it('gives the same state in whatever order its entries arrived', () => {
    const sound = folded(entries);
    fc.assert(
      fc.property(fc.shuffledSubarray([...entries], { minLength: entries.length }), (shuffled) => {
        expect(folded(shuffled)).toEqual(sound);
        expect(place(shuffled)).toEqual(place(entries));
        expect(lots(shuffled)).toEqual(lots(entries));
        expect(scales(shuffled)).toEqual(scales(entries));
      }),
      { numRuns: 300 },
    );
  });

  it('gives the same state entry by entry as all at once', () => {
    for (let count = 1; count <= entries.length; count++) {
      const some = entries.slice(0, count);
      expect(batch(ID, some)).toEqual(batch(ID, [...some].reverse()));
    }
  });

  it('says so when a newer build wrote something that it cannot read', () => {
    const [last] = file.lines.filter(({ entry }) => entry.kind === 'noted');
    if (!last) throw new Error('no note');
    const all = entries.map((entry) => (entry.id === last.entry.id ? newer(last).entry : entry));
    expect(folded(all).unknown).toBe(1);
  });
});

describe('a piece', () => {
  const book = writer();
  const body = { number: 1, grossG: 512, tareG: 12, diameterMm: 40, casing: 'natural', targetLossPct: 35 };
  book.write('piece-stuffed', 'piece:a', body, { refs: ['batch:a'] });
  book.write('weighed', 'piece:a', { grossG: 480, stage: 'round' }, { refs: ['batch:a'] });

  it('is weighed without its tare', () => {
    const made = piece('piece:a', book.entries);
    expect([made?.greenG, made?.weighings.map(({ netG }) => netG)]).toEqual([500, [468]]);
  });

  it('is hanging again when it was taken out of its bag, and bagged when put back', () => {
    const again = writer();
    const at = (hours: number) => ({ atMs: START_MS + hours * HOUR_MS });
    const status = () => piece('piece:a', again.entries)?.status;
    again.write('piece-stuffed', 'piece:a', body, at(0));
    again.write('bagged', 'piece:a', { reason: 'crust' }, at(10));
    expect(status()).toBe('bagged');
    again.write('rehung', 'piece:a', { reason: 'soft again' }, at(20));
    expect(status()).toBe('hanging');
    again.write('bagged', 'piece:a', { reason: 'crust' }, at(30));
    expect(status()).toBe('bagged');
    again.write('taken-down', 'piece:a', { why: 'at-target' }, at(40));
    expect(status()).toBe('taken-down');
  });

  it('does not exist while nothing that stands says that it was stuffed', () => {
    const struck = writer();
    struck.write('piece-stuffed', 'piece:a', body);
    struck.write('struck', 'piece:a', {}, { strikes: idOf(1) });
    expect(piece('piece:a', struck.entries)).toBeNull();
  });

  it('loses a weighing in its batch when that is struck under the batch', () => {
    const log = writer();
    log.write('noted', 'batch:a', { text: '' });
    log.write('piece-stuffed', 'piece:a', body, { refs: ['batch:a'] });
    const wrong = log.write('weighed', 'piece:a', { grossG: 48, stage: 'round' }, { refs: ['batch:a'] });
    log.write('struck', 'batch:a', {}, { strikes: wrong.id });
    const opened = entries.find((entry) => entry.kind === 'batch-opened');
    if (!opened) throw new Error('no batch was opened');
    const made = batch('batch:a', [{ ...opened, subject: 'batch:a' }, ...log.entries]);
    expect(made?.pieces.map(({ weighings }) => weighings)).toEqual([[]]);
  });
});
