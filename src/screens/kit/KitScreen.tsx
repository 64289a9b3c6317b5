import type { Place } from '#record/place.ts';
import { BUILD } from '#store/build.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useKit } from '#store/live.ts';
import { useExposure } from '#store/use-exposure.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './KitScreen.module.css';
import { kitView } from './kit-view.ts';

const MINUTE_MS = 60_000;

export function KitScreen({ words, place }: { words: Words; place: Place }) {
  const kit = useKit();
  const exposure = useExposure();
  const nowMs = useNowMs(MINUTE_MS);
  if (kit === undefined || exposure === undefined) return <Waiting label={words.app.waiting} />;
  const view = kitView({ place, kit, exposure, nowMs, zone: zoneAt(nowMs), words });
  return (
    <Page
      title={words.kit.title}
      sentence={view.sentence}
      acts={
        !place.chosen && (
          <Button kind="primary" href="#/kit/bench">
            {words.kit.setUp}
          </Button>
        )
      }
    >
      <List label={words.kit.title}>
        {view.rows.map(({ href, title, note }) => (
          <Row key={href} href={href} title={title} note={note} />
        ))}
      </List>
      <p className={styles.foot}>{words.app.caution.short}</p>
      <p className={styles.foot}>{words.kit.build(BUILD)}</p>
    </Page>
  );
}
