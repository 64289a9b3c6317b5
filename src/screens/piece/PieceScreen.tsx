import { useMemo, useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import { isSubject, type SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useTouching } from '#store/live.ts';
import { type Fact, useAppend } from '#store/use-append.ts';
import { useBatchAhead } from '#store/use-batch-ahead.ts';
import { Button } from '#ui/Button.tsx';
import { PieceDrawing } from '#ui/drawings/PieceDrawing.tsx';
import { Figure, Figures } from '#ui/Figure.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { CutSheet } from './CutSheet.tsx';
import { DownSheet } from './DownSheet.tsx';
import styles from './PieceScreen.module.css';
import { pieceView } from './piece-view.ts';
import { TargetSheet } from './TargetSheet.tsx';

const MINUTE_MS = 60_000;
/** No batch has this id: what is asked for while the piece's own is not known yet. */
const NOWHERE: SubjectId = 'batch:0';

export function PieceScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `piece:${id}`;
  const own = useTouching(subject);
  const home = own?.flatMap(({ refs }) => refs).find((ref) => isSubject(ref, 'batch')) ?? NOWHERE;
  const entries = useTouching(home);
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState<'target' | 'down' | 'cut' | null>(null);
  const batch = useMemo(() => (entries ? foldBatch(home, entries) : null), [entries, home]);
  const { ahead, working } = useBatchAhead(batch, nowMs);
  if (own === undefined || entries === undefined) return <Waiting label={words.app.waiting} />;
  const piece = batch?.pieces.find((each) => each.id === subject);
  if (!batch || !piece) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const forecast = ahead?.pieces.find((each) => each.piece === subject) ?? null;
  const zone = zoneAt(nowMs);
  const view = pieceView({ piece, forecast, working, place, nowMs, zone, words });
  const { act } = words.piece;
  const saved = words.app.saving(saving);
  const keep = async (fact: Pick<Fact, 'kind' | 'body' | 'strikes'>) => {
    const result = await save([{ ...fact, subject, refs: [home] } as Fact]);
    if (result.ok) setOpen(null);
  };
  const homePage = `#/batches/${home.slice('batch:'.length)}/hanging`;
  return (
    <Page
      title={words.piece.title(piece.number)}
      line={words.piece.line(batch.opened.body.formula.name, batch.opened.body.lot)}
      back={{ href: homePage, label: act.batch }}
      sentence={view.sentence}
      acts={
        piece.status === 'hanging' ? (
          <>
            <Button onPress={() => setOpen('target')}>{act.target}</Button>
            <Button kind="primary" onPress={() => setOpen('down')}>
              {act.down}
            </Button>
          </>
        ) : (
          <Button
            kind={piece.status === 'bagged' ? 'primary' : 'second'}
            onPress={() =>
              keep({
                kind: 'rehung',
                body: {
                  reason: piece.status === 'bagged' ? words.piece.rehang.reason : words.piece.again.reason,
                },
              })
            }
          >
            {act.rehang}
          </Button>
        )
      }
    >
      <div className={styles.top}>
        <div className={styles.drawing}>
          <PieceDrawing
            diameterMm={piece.diameterMm}
            lengthMm={piece.diameterMm * 5}
            lossFraction={view.lossFraction}
            targetFraction={piece.targetLossPct / 100}
            seed={piece.number}
            label={words.piece.title(piece.number)}
          />
        </div>
        <Figures>
          {view.figures.map(({ key, ...figure }) => (
            <Figure key={key} {...figure} />
          ))}
        </Figures>
      </div>
      {saved && open === null && <SavedMark state={saved.state} text={saved.text} />}
      <section>
        <h2>{words.piece.weighings}</h2>
        <List label={words.piece.weighings}>
          {view.weighings.map(({ key, ...row }) => (
            <Row key={key} {...row} />
          ))}
        </List>
      </section>
      <div className={styles.more}>
        {view.weighings[0] && (
          <Button
            onPress={() =>
              keep({
                kind: 'struck',
                body: {},
                strikes: { id: view.weighings[0]?.key ?? piece.stuffed.id, reason: words.piece.strikeReason },
              })
            }
          >
            {words.piece.strike}
          </Button>
        )}
        {piece.status === 'hanging' && (
          <>
            <Button onPress={() => keep({ kind: 'bagged', body: { reason: words.piece.bag.reason } })}>
              {act.bag}
            </Button>
            <Button onPress={() => setOpen('cut')}>{words.piece.cut.open}</Button>
          </>
        )}
      </div>
      {open === 'target' && (
        <TargetSheet
          place={place}
          words={words}
          saved={words.app.unsaved(saving)}
          onSave={(body) => keep({ kind: 're-targeted', body })}
          onClose={() => setOpen(null)}
        />
      )}
      {open === 'cut' && (
        <CutSheet
          tareG={piece.tareG}
          greenG={piece.greenG}
          place={place}
          words={words}
          saved={words.app.unsaved(saving)}
          onSave={(body) => keep({ kind: 'cut', body })}
          onClose={() => setOpen(null)}
        />
      )}
      {open === 'down' && (
        <DownSheet
          words={words}
          saved={words.app.unsaved(saving)}
          onSave={(body) => keep({ kind: 'taken-down', body })}
          onClose={() => setOpen(null)}
        />
      )}
    </Page>
  );
}
