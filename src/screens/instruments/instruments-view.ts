import { type Check, checksOf, hasFailed } from '#record/instruments.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';
import { type Instrument, nextDueMs } from './instrument-view.ts';

export type InstrumentsView = {
  readonly sentence: Said;
  readonly rows: readonly {
    key: string;
    href: string;
    title: string;
    note: string;
    state: 'good' | 'due' | 'failed' | 'never';
  }[];
};

/** Every instrument with its last check; failed ones first, then those that are due. */
export function instrumentsView({
  instruments,
  checks,
  nowMs,
  zone,
  words,
}: {
  instruments: readonly Instrument[];
  checks: readonly Check[];
  nowMs: number;
  zone: string;
  words: Words;
}): InstrumentsView {
  const say = words.instruments;
  const order = ['failed', 'due', 'never', 'good'];
  const rows = instruments
    .map((instrument) => {
      const last = checksOf(checks, instrument.id).at(-1);
      const dueMs = nextDueMs(instrument, last);
      const isDue = dueMs !== null && dueMs <= nowMs;
      const state: InstrumentsView['rows'][number]['state'] = !last
        ? 'never'
        : hasFailed(last)
          ? 'failed'
          : isDue
            ? 'due'
            : 'good';
      const ago = last ? words.dates.ago(last.atMs, nowMs) : '';
      return {
        key: instrument.id,
        href: `#/instruments/${instrument.id.slice('instrument:'.length)}`,
        title: instrument.name,
        state,
        name: instrument.name,
        note: [
          ...(instrument.name === say.what[instrument.what] ? [] : [say.what[instrument.what]]),
          state === 'never' ? say.never : state === 'failed' ? say.failedNote(ago) : say.checkedNote(ago),
          ...(dueMs === null || state === 'failed'
            ? []
            : [isDue ? say.dueNow : say.dueNote(words.dates.near(dueMs, nowMs, zone))]),
        ].join(', '),
      };
    })
    .sort((a, b) => order.indexOf(a.state) - order.indexOf(b.state));
  const names = (state: string) =>
    rows
      .filter((row) => row.state === state)
      .map(({ name }) => name)
      .join(', ');
  const waiting = [names('due'), names('never')].filter(Boolean).join(', ');
  return {
    sentence:
      rows.length === 0
        ? say.none
        : names('failed')
          ? say.sentence.failed(names('failed'))
          : waiting
            ? say.sentence.due(waiting)
            : say.sentence.good,
    rows: rows.map(({ name: _name, ...row }) => row),
  };
}
