import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { newSubject } from '#store/append.ts';
import { useKit, useSubjects } from '#store/live.ts';
import { type Fact, useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Figure } from '#ui/Figure.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { MeterSheet } from './MeterSheet.tsx';
import { ScaleSheet } from './ScaleSheet.tsx';
import styles from './ScalesScreen.module.css';
import { StrikeSheet } from './StrikeSheet.tsx';
import { type InstrumentRow, scalesView } from './scales-view.ts';

type Open = 'scale' | 'meter' | InstrumentRow | null;

export function ScalesScreen({ words, place }: { words: Words; place: Place }) {
  const kit = useKit();
  const entries = useSubjects([...(kit?.scales ?? []), ...(kit?.meters ?? [])].map(({ id }) => id));
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState<Open>(null);
  if (kit === undefined || entries === undefined) return <Waiting label={words.app.waiting} />;
  const say = words.kit.scales;
  const view = scalesView(entries, place, words);
  const saved = words.app.saving(saving);
  const inSheet = saved?.state === 'saved' ? null : saved;
  const close = () => setOpen(null);
  const keep = async (fact: Fact) => {
    if ((await save([fact])).ok) close();
  };
  const none = view.scales.length === 0;
  return (
    <Page
      title={say.title}
      sentence={view.sentence}
      back={{ href: '#/kit', label: words.kit.toKit }}
      acts={
        <>
          <Button onPress={() => setOpen('meter')}>{say.addMeter}</Button>
          <Button kind="primary" onPress={() => setOpen('scale')}>
            {say.addScale}
          </Button>
        </>
      }
    >
      {saved?.state === 'saved' && <SavedMark state="saved" text={saved.text} />}
      {view.dose && <Figure label={say.dose} {...view.dose} />}
      {!none && (
        <section className={styles.section}>
          <h2>{say.scales}</h2>
          <List label={say.scales}>
            {view.scales.map((scale) => (
              <Row key={scale.subject} title={scale.name} note={scale.note} onPress={() => setOpen(scale)} />
            ))}
          </List>
        </section>
      )}
      <section className={styles.section}>
        <h2>{say.meters}</h2>
        {view.meters.length === 0 ? (
          <p>{say.noMeters}</p>
        ) : (
          <List label={say.meters}>
            {view.meters.map((meter) => (
              <Row key={meter.subject} title={meter.name} note={meter.note} onPress={() => setOpen(meter)} />
            ))}
          </List>
        )}
      </section>
      {(!none || view.meters.length > 0) && (
        <List>
          <Row href="#/instruments" title={say.toChecks} note={say.toChecksNote} />
          <Row href="#/" title={say.toToday} />
        </List>
      )}
      {open === 'scale' && (
        <ScaleSheet
          place={place}
          words={words}
          saved={inSheet}
          onClose={close}
          onSave={(body) => void keep({ kind: 'scale-added', subject: newSubject('instrument'), body })}
        />
      )}
      {open === 'meter' && (
        <MeterSheet
          words={words}
          saved={inSheet}
          onClose={close}
          onSave={(body) => void keep({ kind: 'meter-added', subject: newSubject('instrument'), body })}
        />
      )}
      {open !== null && typeof open === 'object' && (
        <StrikeSheet
          name={open.name}
          note={open.note}
          words={words}
          saved={inSheet}
          onClose={close}
          onStrike={(reason) =>
            void keep({
              kind: 'struck',
              subject: open.subject,
              body: {},
              strikes: { id: open.entry, reason },
            })
          }
        />
      )}
    </Page>
  );
}
