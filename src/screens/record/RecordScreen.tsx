import { useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { BUILD } from '#store/build.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useKit, useTouching } from '#store/live.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { byView } from './by-view.ts';
import { EntriesBy } from './EntriesBy.tsx';
import { PrintedSheet } from './PrintedSheet.tsx';
import styles from './RecordScreen.module.css';
import { entryRows, recordView } from './record-view.ts';
import '#ui/print.css';
import { useDoubted } from '#store/use-doubted.ts';
import { useHeads } from '#store/use-heads.ts';

const MINUTE_MS = 60_000;

/** The batch record as it is printed: what is on the screen is what comes out on paper. */
export function RecordScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const kit = useKit();
  const [chosen, setChosen] = useState<string[]>([]);
  const nowMs = useNowMs(MINUTE_MS);
  const heads = useHeads([...new Set(entries?.map(({ device }) => device))].sort());
  const doubted = useDoubted(nowMs) ?? null;
  if (entries === undefined || kit === undefined || heads === undefined)
    return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const zone = zoneAt(nowMs);
  const given = { batch, entries, heads, doubted, kit, place, nowMs, zone, build: BUILD, words };
  const view = recordView(given);
  const by = byView({ rows: entryRows(given), chosen, words });
  return (
    <Page
      title={words.record.title}
      line={view.line}
      back={{ href: `#/batches/${id}`, label: words.app.back }}
      sentence={view.sentence}
      acts={
        <Button kind="primary" disabled={doubted === null} onPress={() => window.print()}>
          {words.record.print}
        </Button>
      }
    >
      <List>
        <Row href={`#/batches/${id}/photos`} title={words.photos.title} note={words.photos.note} />
      </List>
      <EntriesBy view={by} chosen={chosen} onChosen={setChosen} words={words} />
      <div className={`${styles.sheets} ${by.filtered ? styles.onPaper : ''}`}>
        {view.sheets.map(({ key, blocks, foot }) => (
          <PrintedSheet
            key={key}
            head={view.head}
            made={view.made}
            chain={view.chain}
            foot={foot}
            paper={place.paper}
            blocks={blocks}
            words={words}
          />
        ))}
      </div>
    </Page>
  );
}
