import { useState } from 'react';
import { checkAgain } from '#store/open.ts';
import { requestPersistence } from '#store/persistence.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Mark } from '#ui/Mark.tsx';
import type { Words } from '#words/en.ts';
import styles from './KeepingScreen.module.css';
import type { KeepingView } from './keeping-view.ts';

/** How the log is kept on this phone, and what the checks found. */
export function HealthPanel({ words, view }: { words: Words; view: KeepingView }) {
  const [asked, setAsked] = useState<boolean | null>(null);
  const [check, setCheck] = useState<'at-start' | 'running' | 'now'>('at-start');
  const say = words.keeping.health;
  return (
    <section className={styles.panel} aria-labelledby="health">
      <h2 id="health">{say.title}</h2>
      <dl className={styles.counts}>
        {view.rows.map(({ label, value, note, amiss }) => (
          <div key={label} className={styles.count}>
            <dt>
              {amiss && <Mark shape="caution" />}
              {label}
            </dt>
            <dd className={styles.words}>
              {value}
              {note && <span className={styles.note}>{note}</span>}
            </dd>
          </div>
        ))}
      </dl>
      {view.canAsk && asked !== true && (
        <div className={styles.acts}>
          <Button onPress={async () => setAsked(await requestPersistence())}>{say.ask}</Button>
        </div>
      )}
      <p role="status">{asked === false ? say.asked : asked ? say.askedYes : ''}</p>
      <h3>{say.history}</h3>
      <p role="status" className={styles.note}>
        {check === 'running' ? say.checking : check === 'now' ? say.checkedNow : say.checked}
      </p>
      {view.notices.length === 0 ? (
        <p>{say.historyNone}</p>
      ) : (
        <List label={say.history}>
          {view.notices.map(({ key, text, when }) => (
            <Row key={key} title={text} note={when} />
          ))}
        </List>
      )}
      <div className={styles.acts}>
        <Button
          disabled={check === 'running'}
          onPress={async () => {
            setCheck('running');
            await checkAgain();
            setCheck('now');
          }}
        >
          {say.check}
        </Button>
      </div>
    </section>
  );
}
