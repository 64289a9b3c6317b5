import type { Place } from '#record/place.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useHealth } from '#store/use-health.ts';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import { localText } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';
import { BackUp } from './BackUp.tsx';
import { GiveOut } from './GiveOut.tsx';
import { HealthPanel } from './HealthPanel.tsx';
import { KeepingPhotos } from './KeepingPhotos.tsx';
import { keepingView } from './keeping-view.ts';
import { TakeIn } from './TakeIn.tsx';

const MINUTE_MS = 60_000;

/** The backup, the way from another phone, and how the log is kept on this one. */
export function KeepingScreen({ words, place }: { words: Words; place: Place }) {
  const health = useHealth();
  const nowMs = useNowMs(MINUTE_MS);
  if (health === undefined) return <Waiting label={words.app.waiting} />;
  const view = keepingView({ health, place, nowMs, zone: zoneAt(nowMs), words });
  return (
    <Page
      title={words.keeping.title}
      sentence={view.sentence}
      back={{ href: '#/kit', label: words.kit.toKit }}
    >
      {view.canBackUp && <BackUp words={words} place={place} nowMs={nowMs} />}
      {view.canBackUp && <GiveOut words={words} place={place} day={localText(nowMs).slice(0, 10)} />}
      {view.canBackUp && <KeepingPhotos words={words} day={localText(nowMs).slice(0, 10)} />}
      <TakeIn words={words} place={place} zone={zoneAt(nowMs)} />
      <HealthPanel words={words} view={view} />
      <List>
        <Row
          href="#/kit/clock"
          title={words.clock.row}
          note={words.clock.rowNote(health.clockSteps.length)}
        />
      </List>
    </Page>
  );
}
