import { useMemo, useState } from 'react';
import type { Place } from '#record/place.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches, useKit } from '#store/live.ts';
import { Choice } from '#ui/Choice.tsx';
import { Page } from '#ui/Page.tsx';
import { PlainTable } from '#ui/PlainTable.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './CompareScreen.module.css';
import { compareView, type Line, others } from './compare-view.ts';

const HOUR_MS = 3_600_000;
const OFFERED = 6;

/** Two batches side by side, so that the next one is changed in one thing and for a reason. */
export function CompareScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const batches = useBatches();
  const kit = useKit();
  const nowMs = useNowMs(HOUR_MS);
  const [chosen, setChosen] = useState<string | null>(null);
  const one = batches?.find((each) => each.id === `batch:${id}`);
  const offered = useMemo(
    () => (one && batches ? others(one, batches).slice(0, OFFERED) : []),
    [one, batches],
  );
  const two = offered.find((each) => each.id === chosen) ?? offered[0];
  if (batches === undefined || kit === undefined) return <Waiting label={words.app.waiting} />;
  if (!one) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const say = words.compare;
  const view = two && compareView(one, two, nowMs, { place, words, ...kit });
  return (
    <Page
      title={say.title}
      line={say.line(one.opened.body.formula.name, one.opened.body.lot)}
      back={{ href: `#/batches/${id}`, label: words.app.back }}
      sentence={view ? view.sentence : say.noOther}
    >
      {offered.length > 0 && (
        <Choice
          label={say.choose}
          options={offered.map(({ id: value, opened }) => ({
            value: value as string,
            label: opened.body.formula.name,
            note: say.lot(opened.body.lot, words.dates.day(opened.atMs, zoneAt(opened.atMs), nowMs)),
          }))}
          value={two?.id ?? null}
          onValue={setChosen}
        />
      )}
      {view && (
        <>
          <Lines title={say.differs} lines={view.differs} heads={view.heads} what={say.what} />
          <Lines title={say.cameOutTitle} lines={view.cameOut} heads={view.heads} what={say.what} />
          <Lines title={say.unwritten} lines={view.unwritten} heads={view.heads} what={say.what} folded />
          <Lines title={say.same} lines={view.same} heads={view.heads} what={say.what} folded />
          <p className={styles.small}>{say.tolerance}</p>
        </>
      )}
    </Page>
  );
}

function Lines({
  title,
  lines,
  heads,
  what,
  folded = false,
}: {
  title: string;
  lines: readonly Line[];
  heads: readonly [string, string];
  what: string;
  folded?: boolean;
}) {
  if (lines.length === 0) return null;
  const rows = lines.map(({ label, one, two }) => [label, one, two]);
  const table = <PlainTable columns={[what, ...heads]} rows={rows} />;
  if (folded)
    return (
      <details className={styles.folded}>
        <summary>{title}</summary>
        {table}
      </details>
    );
  return (
    <section>
      <h2>{title}</h2>
      {table}
    </section>
  );
}
