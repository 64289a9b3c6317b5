import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import type { Words } from '#words/en.ts';
import type { BackView } from './back-view.ts';
import styles from './CalendarScreen.module.css';

/** From when to begin, whether there is room, and what would still make it. */
export function BackAnswer({ view, words, onPass }: { view: BackView; words: Words; onPass: () => void }) {
  const { back } = words.calendar;
  return (
    <div className={styles.answer} aria-live="polite">
      <Sentence tokens={view.sentence} />
      <List label={back.title}>
        {view.rows.map(({ key, title, note, steps }) => (
          <Row key={key} title={title} note={`${note} · ${steps}`} />
        ))}
      </List>
      {view.room.length > 0 && (
        <section className={styles.back}>
          <h3>{back.room.title}</h3>
          {view.room.map((tokens) => (
            <Sentence key={tokens.map((token) => JSON.stringify(token)).join('')} small tokens={tokens} />
          ))}
        </section>
      )}
      {view.still && (
        <section className={styles.back}>
          <h3>{back.still}</h3>
          <ul className={styles.still}>
            {view.still.map((each) => (
              <li key={each}>{each}</li>
            ))}
          </ul>
        </section>
      )}
      {view.history && <p>{view.history}</p>}
      {view.schedule.likely && <Button onPress={onPass}>{back.pass}</Button>}
      <p className={styles.small}>{view.counted}</p>
    </div>
  );
}
