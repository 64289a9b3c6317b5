import { csvText } from '#files/csv-text.ts';
import { handOver } from '#files/hand-over.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useKit } from '#store/live.ts';
import { useUsesOfLot } from '#store/use-uses-of-lot.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './TraceScreen.module.css';
import { traceView } from './trace-view.ts';

/** One lot, and everything that it went into, down to each piece: what a recall asks first. */
export function TraceScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const lot: SubjectId<'lot'> = `lot:${id}`;
  const uses = useUsesOfLot(lot);
  const kit = useKit();
  if (uses === undefined || kit === undefined) return <Waiting label={words.app.waiting} />;
  const view = traceView({ lot, uses, lots: kit.lots, place, words });
  const { trace } = words;
  const save = () =>
    handOver({
      name: trace.fileName(view.line),
      mime: 'text/csv',
      content: csvText(view.cells, { decimal: place.decimal, byteOrderMark: true }),
    });
  return (
    <Page
      title={trace.title}
      line={view.line}
      sentence={view.sentence}
      back={{ href: `#/kit/received/${id}`, label: trace.back }}
      acts={
        view.batches.length > 0 && (
          <Button kind="primary" onPress={() => void save()}>
            {trace.csv}
          </Button>
        )
      }
    >
      {view.unreadable && <Notice kind="caution">{trace.unreadable}</Notice>}
      {view.batches.map(({ key, href, title, opened, decision, uses: used, pieces, others }) => (
        <section key={key} className={styles.batch} aria-label={`${title}, ${opened}`}>
          <h2>
            <a href={href}>{title}</a>
          </h2>
          <p>
            {opened}, {decision}
          </p>
          <ul className={styles.uses}>
            {used.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          {pieces.length === 0 ? (
            <p>{trace.noPieces}</p>
          ) : (
            <List label={trace.pieces}>
              {pieces.map((piece) => (
                <Row
                  key={piece.key}
                  href={piece.href}
                  title={piece.title}
                  note={piece.note}
                  figure={piece.green}
                />
              ))}
            </List>
          )}
          {others.length > 0 && (
            <>
              <h3>{trace.otherLots}</h3>
              <List label={trace.otherLots}>
                {others.map((other) => (
                  <Row key={other.key} href={other.href} title={other.title} />
                ))}
              </List>
            </>
          )}
        </section>
      ))}
      <p className={styles.note}>{trace.note}</p>
    </Page>
  );
}
