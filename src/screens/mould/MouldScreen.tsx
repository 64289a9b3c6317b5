import { useState } from 'react';
import { smallPhoto } from '#files/small-photo.ts';
import { batch as foldBatch } from '#record/batch.ts';
import type { EntryId } from '#record/entry.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { usePhotographing } from '#store/use-photo.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { PhotoButton } from '#ui/PhotoButton.tsx';
import { PhotoPair } from '#ui/PhotoFrame.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { MouldQuestions } from './MouldQuestions.tsx';
import { type Answers, daysSinceStuffing, lookedBody, looks } from './mould-view.ts';
import { PhotoOfRow } from './PhotoOfRow.tsx';
import { photosOfPiece } from './photos-view.ts';

const MINUTE_MS = 60_000;
/** Two rows of two: what fits beside the question. All others stand on the page of the photos. */
const MOST_BESIDE = 4;
const NOTHING: Answers = { colour: null, texture: null, spread: null };

/** Asks first and stays careful: no mould is called harmless here. The photo comes when the answers are on disk. */
export function MouldScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const { photographing, photograph } = usePhotographing(place.initials, smallPhoto);
  const [pieceId, setPieceId] = useState<SubjectId | null>(null);
  const [answers, setAnswers] = useState(NOTHING);
  const [action, setAction] = useState<BodyOf<'mould-looked'>['action'] | null>(null);
  /** The look that was written down last: what a photo taken now belongs to. */
  const [written, setWritten] = useState<EntryId | null>(null);
  if (entries === undefined) return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const { mould, photos } = words;
  const seen = { nowMs, zone: zoneAt(nowMs), words };
  const up = batch.pieces.filter(({ status }) => status !== 'taken-down');
  const piece = up.find((each) => each.id === pieceId);
  const days = daysSinceStuffing(batch, seen);
  const body = lookedBody(answers, action);
  const choose = (next: SubjectId) => {
    setPieceId(next);
    setAnswers(NOTHING);
    setAction(null);
    setWritten(null);
  };
  const keep = async () => {
    if (!piece || body === null) return;
    const kept = await save([{ kind: 'mould-looked', subject: piece.id, refs: [subject], body }]);
    if (kept.ok) setWritten(kept.entries[0]?.id ?? null);
  };
  const { formula, lot } = batch.opened.body;
  const before = piece ? photosOfPiece(piece, entries, seen) : [];
  const rows = looks(batch, entries, seen);
  const mark = photos.mark(photographing);
  const saved = words.app.saving(saving);
  return (
    <Page
      title={mould.title}
      line={[mould.line(formula.name, lot), ...(days === null ? [] : [mould.stage(days)])].join(', ')}
      back={{ href: `#/batches/${id}/hanging`, label: words.app.back }}
      sentence={up.length === 0 ? mould.none : mould.sentence}
      acts={
        piece && written ? (
          <PhotoButton
            kind="primary"
            label={photos.takePiece(piece.number)}
            disabled={mark?.state === 'saving'}
            onPhoto={(file) => void photograph(file, { subject: piece.id, refs: [subject], of: written })}
          />
        ) : (
          piece && (
            <Button kind="primary" onPress={keep} disabled={body === null || saving.state === 'saving'}>
              {mould.save}
            </Button>
          )
        )
      }
    >
      {up.length > 0 && (
        <Choice<SubjectId>
          label={mould.piece}
          options={up.map((each) => ({ value: each.id, label: mould.number(each.number) }))}
          value={pieceId}
          onValue={choose}
        />
      )}
      {piece && written && <SavedMark state="saved" text={mould.written(piece.number)} />}
      {saved?.state === 'not-saved' && <SavedMark {...saved} />}
      {mark && written && <SavedMark {...mark} />}
      {piece && (
        <section>
          <h2>{photos.side}</h2>
          {before.length === 0 ? (
            <p>{photos.sideNone}</p>
          ) : (
            <PhotoPair label={photos.piece(piece.number)}>
              {before.slice(0, MOST_BESIDE).map((row) => (
                <PhotoOfRow key={row.key} row={row} words={words} />
              ))}
            </PhotoPair>
          )}
        </section>
      )}
      {piece && !written && (
        <MouldQuestions
          answers={answers}
          action={action}
          sinceStuffingDays={days}
          words={words}
          onAnswers={setAnswers}
          onAction={setAction}
        />
      )}
      {up.length > 0 && (
        <Notice kind="caution">
          {mould.caution} {mould.standing} <a href="#/hazards">{words.app.caution.more}</a>
        </Notice>
      )}
      <List>
        <Row href={`#/batches/${id}/photos`} title={photos.title} note={photos.note} />
      </List>
      {rows.length > 0 && (
        <section>
          <h2>{mould.looks}</h2>
          <List label={mould.looks}>
            {rows.map(({ key, ...row }) => (
              <Row key={key} {...row} />
            ))}
          </List>
        </section>
      )}
    </Page>
  );
}
