import { useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { type Answers, looks, mouldAdvice } from './mould-view.ts';

type Looked = BodyOf<'mould-looked'>;
const MINUTE_MS = 60_000;
const NOTHING: Answers = { colour: null, texture: null, spread: null };

/** Asks first and stays careful: no mould is called harmless here. */
export function MouldScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const nowMs = useNowMs(MINUTE_MS);
  const { saving, save } = useAppend(place.initials);
  const [piece, setPiece] = useState<SubjectId | null>(null);
  const [answers, setAnswers] = useState(NOTHING);
  const [action, setAction] = useState<Looked['action'] | null>(null);
  if (entries === undefined) return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const { mould } = words;
  const up = batch.pieces.filter(({ status }) => status !== 'taken-down');
  const { colour } = answers;
  const bare = colour === 'none';
  const advice = mouldAdvice(answers);
  const saved = words.app.saving(saving);
  const body: Looked | null =
    colour === null || action === null || (!bare && (answers.texture === null || answers.spread === null))
      ? null
      : { colour, texture: answers.texture ?? 'powder', spread: answers.spread ?? 'spots', action };
  const keep = async () => {
    if (piece === null || body === null) return;
    if (!(await save([{ kind: 'mould-looked', subject: piece, refs: [subject], body }])).ok) return;
    setAnswers(NOTHING);
    setAction(null);
    setPiece(null);
  };
  const options = <T extends string>(of: Readonly<Record<T, string>>) =>
    Object.entries<string>(of).map(([value, label]) => ({ value: value as T, label }));
  const { formula, lot } = batch.opened.body;
  const rows = looks(batch, entries, { nowMs, zone: zoneAt(nowMs), words });
  return (
    <Page
      title={mould.title}
      line={mould.line(formula.name, lot)}
      back={{ href: `#/batches/${id}/hanging`, label: words.app.back }}
      sentence={up.length === 0 ? mould.none : mould.sentence}
      acts={
        up.length > 0 && (
          <Button
            kind="primary"
            onPress={keep}
            disabled={piece === null || body === null || saved?.state === 'saving'}
          >
            {mould.save}
          </Button>
        )
      }
    >
      {up.length > 0 && (
        <>
          <Choice<SubjectId>
            label={mould.piece}
            options={up.map((each) => ({ value: each.id, label: mould.number(each.number) }))}
            value={piece}
            onValue={setPiece}
          />
          <Choice
            label={mould.colour}
            options={options(mould.colours)}
            value={colour}
            onValue={(value) => setAnswers({ ...answers, colour: value })}
          />
          {colour !== null && !bare && (
            <>
              <Choice
                label={mould.texture}
                options={options(mould.textures)}
                value={answers.texture}
                onValue={(texture) => setAnswers({ ...answers, texture })}
              />
              <Choice
                label={mould.spread}
                options={options(mould.spreads)}
                value={answers.spread}
                onValue={(spread) => setAnswers({ ...answers, spread })}
              />
            </>
          )}
          {advice !== 'wait' && (
            <>
              <div aria-live="polite">
                <Sentence tokens={mould.advice[advice]} />
              </div>
              <Choice
                label={mould.action}
                options={options(mould.actions)}
                value={action}
                onValue={setAction}
              />
            </>
          )}
          <Notice kind="caution">
            {mould.caution} {mould.standing} <a href="#/hazards">{words.app.caution.more}</a>
          </Notice>
        </>
      )}
      {saved && <SavedMark state={saved.state} text={saved.text} />}
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
