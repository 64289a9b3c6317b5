import type { Place } from '#record/place.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useBatches, useChecks, useKit, useUnbacked, useWorkshop } from '#store/live.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { FirstWords } from '#words/en/first.ts';
import { todayView } from './today-view.ts';

const MINUTE_MS = 60_000;

export function TodayScreen({ words, place }: { words: FirstWords; place: Place }) {
  const batches = useBatches();
  const kit = useKit();
  const entries = useWorkshop();
  const unbacked = useUnbacked();
  const checks = useChecks();
  const nowMs = useNowMs(MINUTE_MS);
  if (
    batches === undefined ||
    kit === undefined ||
    entries === undefined ||
    checks === undefined ||
    unbacked === undefined
  )
    return <Waiting label={words.app.waiting} />;
  const { chambers } = kit;
  const view = todayView({
    batches,
    chambers,
    entries,
    checks,
    unbacked,
    place,
    nowMs,
    zone: zoneAt(nowMs),
    words,
  });
  return (
    <Page
      title={words.today.title}
      line={words.app.name}
      sentence={view.sentence}
      acts={
        view.act && (
          <Button href={view.act.href} kind="primary">
            {view.act.label}
          </Button>
        )
      }
    >
      <List>
        {view.lines.map(({ key, href, text, note }) => (
          <Row key={key} href={href} title={text} note={note} />
        ))}
      </List>
      {batches.length > 0 && (
        <List label={words.today.ways.title}>
          <Row href="#/calendar" {...words.today.ways.calendar} />
          <Row href="#/after-fault" {...words.today.ways.afterFault} />
          <Row href="#/absence" {...words.today.ways.absence} />
        </List>
      )}
      <p>
        <small>
          {words.app.caution.short} <a href="#/hazards">{words.app.caution.more}</a>
        </small>
      </p>
    </Page>
  );
}
