import { useState } from 'react';
import type { Batch } from '#record/batch.ts';
import type { Piece } from '#record/piece.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import { Ask } from '#ui/Ask.tsx';
import { BigValue } from '#ui/BigValue.tsx';
import { Button } from '#ui/Button.tsx';
import { PieceDrawing } from '#ui/drawings/PieceDrawing.tsx';
import { NumberPad } from '#ui/NumberPad.tsx';
import { Page } from '#ui/Page.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';
import { said } from '#words/said.ts';
import styles from './RoundScreen.module.css';
import { MOST_PIECE_G, meaning, roundView, unlikely } from './round-view.ts';
import { useMostLostPct } from './use-most-lost.ts';

export type PieceWeighed = {
  grossG: number;
  typed: { text: string; unit: string };
  kept: boolean;
};

/** Holds the line on which the unit stands. */
const NOTHING = '\u200b';

/** One piece of the round: what it was, the value being typed, what it means, and the keys under the thumb. */
export function PieceWeighing({
  piece,
  next,
  batch,
  stepG,
  place,
  words,
  nowMs,
  back,
  saved,
  last,
  onWeighed,
  onSkip,
  onFind,
}: {
  piece: Piece;
  next: number | null;
  batch: Batch;
  stepG: number;
  place: Place;
  words: Words;
  nowMs: number;
  back: { href: string; label: string };
  saved: { state: SavedState; text: string } | null;
  last: { text: string; undo: string; undoLabel: string; onUndo: () => void } | null;
  onWeighed: (weighed: PieceWeighed) => Promise<void>;
  onSkip: () => void;
  onFind: () => void;
}) {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [question, setQuestion] = useState<string | null>(null);
  const mostPct = useMostLostPct(piece, batch, nowMs);
  const { round } = words;
  const view = roundView({ piece, batch, stepG, place, nowMs, words });
  const read = readQuantity({ text, unit: view.unit, decimal: place.decimal, least: 0, most: MOST_PIECE_G });
  const netG = read.ok ? read.value - piece.tareG : null;

  const save = async (kept: boolean) => {
    setQuestion(null);
    if (!read.ok) {
      setProblem(words.fields.problem(read.problem, { least: '0', most: view.most }));
      return;
    }
    if (!(read.value > piece.tareG)) {
      setProblem(words.stuffing.notAbove(joined(mass(piece.tareG, 1, place))));
      return;
    }
    const net = read.value - piece.tareG;
    const odd = unlikely(net, piece, mostPct);
    if (odd && !kept) {
      const weight = joined(mass(read.value, stepG, place));
      const beforeG = (pieceFigures(piece).last?.netG ?? piece.greenG) + piece.tareG;
      setQuestion(round[odd](weight, joined(mass(beforeG, stepG, place))));
      return;
    }
    await onWeighed({ grossG: read.value, typed: read.typed, kept });
  };

  const undone = last && saved?.state !== 'saving' && saved?.state !== 'not-saved';
  return (
    <div className={styles.bench}>
      <Page
        title={round.title}
        line={view.line}
        back={back}
        acts={
          <>
            <Button onPress={onSkip}>{round.skip}</Button>
            <Button kind="primary" onPress={() => save(false)} disabled={saved?.state === 'saving'}>
              {round.save(next)}
            </Button>
          </>
        }
      >
        <div className={styles.piece}>
          <div className={styles.drawing}>
            <PieceDrawing {...view.look} label={round.drawing(piece.number)} />
          </div>
          <div className={styles.value}>
            <BigValue text={text || NOTHING} unit={view.unit} label={round.value} previous={view.previous} />
            <div className={styles.meaning}>
              {problem ? (
                <p role="alert" className={styles.problem}>
                  {problem}
                </p>
              ) : (
                <Sentence
                  small
                  tokens={
                    netG !== null && netG > 0 ? meaning(netG, piece, stepG, place, words) : said(round.waits)
                  }
                />
              )}
            </div>
          </div>
        </div>
        <div className={styles.said}>
          {undone ? (
            <SavedMark
              state="saved"
              text={last.text}
              act={
                <Button kind="quiet" label={last.undoLabel} onPress={last.onUndo}>
                  {last.undo}
                </Button>
              }
            />
          ) : (
            saved && <SavedMark state={saved.state} text={saved.text} />
          )}
          {saved?.state !== 'not-saved' && (
            <Button kind="quiet" label={round.findTitle} onPress={onFind}>
              {round.find}
            </Button>
          )}
        </div>
        <div className={styles.keys}>
          <NumberPad
            text={text}
            onText={(typed) => {
              if (saved?.state === 'saving') return;
              setText(typed);
              setProblem(null);
            }}
            decimal={place.decimal}
            label={words.fields.keyboard.pad}
            decimalLabel={words.fields.keyboard.decimal}
            backLabel={words.fields.keyboard.back}
            maxDecimals={view.decimals}
          />
        </div>
        {question && (
          <Ask
            question={question}
            changeLabel={words.app.change}
            keepLabel={words.app.keep}
            onChange={() => setQuestion(null)}
            onKeep={() => save(true)}
          />
        )}
      </Page>
    </div>
  );
}
