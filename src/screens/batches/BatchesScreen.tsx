import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches } from '#store/live.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { batchesView } from './batches-view.ts';

const MINUTE_MS = 60_000;

export function BatchesScreen({ words }: { words: Words }) {
  const batches = useBatches();
  const nowMs = useNowMs(MINUTE_MS);
  if (batches === undefined) return <Waiting label={words.app.waiting} />;
  const view = batchesView({ batches, nowMs, zone: zoneAt(nowMs), words });
  return (
    <Page
      title={words.batches.title}
      sentence={view.sentence}
      acts={
        <Button href="#/formulas" kind={view.rows.length === 0 ? 'primary' : 'second'}>
          {words.batches.open}
        </Button>
      }
    >
      <List>
        {view.rows.map(({ key, href, title, note, value }) => (
          <Row key={key} href={href} title={title} note={note} {...(value ? { figure: value } : {})} />
        ))}
      </List>
    </Page>
  );
}
