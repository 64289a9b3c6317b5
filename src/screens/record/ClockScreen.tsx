import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { clockSubject } from '#record/put-right.ts';
import { useNowMs } from '#store/clock.ts';
import { useAllEntries } from '#store/live.ts';
import { type Fact, useAppend } from '#store/use-append.ts';
import { useDevice } from '#store/use-device.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { StrikeSheet } from '#ui/StrikeSheet.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './ClockScreen.module.css';
import { CorrectionSheet } from './CorrectionSheet.tsx';
import { blank, type CorrectionDraft, proposed } from './clock-input.ts';
import { type CorrectionRow, clockView } from './clock-view.ts';

const MINUTE_MS = 60_000;

/** Where a phone's clock stood wrong, and the entries that put it right. */
export function ClockScreen({ words, place }: { words: Words; place: Place }) {
  const entries = useAllEntries();
  const device = useDevice();
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [writing, setWriting] = useState<CorrectionDraft | null>(null);
  const [striking, setStriking] = useState<CorrectionRow | null>(null);
  if (entries === undefined || device === undefined) return <Waiting label={words.app.waiting} />;
  const say = words.clock;
  const view = clockView({ entries, device, nowMs, words });
  const [phone] = view.phones;
  const saved = words.app.saving(saving);
  const keep = async (fact: Fact) => {
    if (!(await save([fact])).ok) return;
    setWriting(null);
    setStriking(null);
  };
  return (
    <Page
      title={say.title}
      sentence={view.sentence}
      back={{ href: '#/kit/keeping', label: say.toKeeping }}
      acts={phone && <Button onPress={() => setWriting(blank(phone.value))}>{say.other}</Button>}
    >
      {saved?.state === 'saved' && <SavedMark state="saved" text={saved.text} />}
      {view.doubts.length > 0 && (
        <section className={styles.part}>
          <h2>{say.doubts}</h2>
          {view.doubts.map(({ key, text, sides }) => (
            <div key={key}>
              <p>{text}</p>
              <List label={text}>
                {sides.map(({ key: of, title, note, side }) => (
                  <Row key={of} title={title} note={note} onPress={() => setWriting(proposed(side))} />
                ))}
              </List>
            </div>
          ))}
        </section>
      )}
      <section className={styles.part}>
        <h2>{say.corrections}</h2>
        {view.corrections.length === 0 ? (
          <p>{say.noCorrections}</p>
        ) : (
          <List label={say.corrections}>
            {view.corrections.map((row) => (
              <Row
                key={row.key}
                title={row.struck ? <s>{row.title}</s> : row.title}
                note={<span className={styles.note}>{row.note}</span>}
                {...(row.struck ? {} : { onPress: () => setStriking(row) })}
              />
            ))}
          </List>
        )}
      </section>
      {writing && (
        <CorrectionSheet
          begun={writing}
          entries={entries}
          phones={view.phones}
          nowMs={nowMs}
          place={place}
          words={words}
          saved={words.app.unsaved(saving)}
          onSave={(body) => void keep({ kind: 'clock-corrected', subject: clockSubject(body.device), body })}
          onClose={() => setWriting(null)}
        />
      )}
      {striking && (
        <StrikeSheet
          what={striking.title}
          words={say.strike}
          closeLabel={words.app.close}
          saved={words.app.unsaved(saving)}
          onStrike={(reason) =>
            void keep({
              kind: 'struck',
              subject: striking.subject,
              body: {},
              strikes: { id: striking.key, reason },
            })
          }
          onClose={() => setStriking(null)}
        />
      )}
    </Page>
  );
}
