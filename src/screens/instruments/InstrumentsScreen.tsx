import type { Place } from '#record/place.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useChecks, useKit } from '#store/live.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { VerdictSign } from '#ui/VerdictMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { instrumentsOf } from './instrument-view.ts';
import { instrumentsView } from './instruments-view.ts';

const MINUTE_MS = 60_000;
const SIGN = { good: 'within-limit', due: 'pending', failed: 'deviation', never: 'no-reading' } as const;

export function InstrumentsScreen({ words }: { words: Words; place: Place }) {
  const kit = useKit();
  const checks = useChecks();
  const nowMs = useNowMs(MINUTE_MS);
  if (kit === undefined || checks === undefined) return <Waiting label={words.app.waiting} />;
  const view = instrumentsView({
    instruments: instrumentsOf(kit.scales, kit.meters),
    checks,
    nowMs,
    zone: zoneAt(nowMs),
    words,
  });
  return (
    <Page
      title={words.instruments.title}
      sentence={view.sentence}
      back={{ href: '#/kit', label: words.kit.toKit }}
      acts={<Button href="#/kit/scales">{words.instruments.toKit}</Button>}
    >
      <List label={words.instruments.title}>
        {view.rows.map(({ key, href, title, note, state }) => (
          <Row key={key} href={href} title={title} note={note} mark={<VerdictSign verdict={SIGN[state]} />} />
        ))}
      </List>
    </Page>
  );
}
