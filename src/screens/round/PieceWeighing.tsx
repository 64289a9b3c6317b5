import { useState } from 'react';
import type { Batch } from '#record/batch.ts';
import type { Piece } from '#record/piece.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { PieceDrawing } from '#ui/drawings/PieceDrawing.tsx';
import { KeyedValue } from '#ui/KeyedValue.tsx';
import { Page } from '#ui/Page.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';
import { said } from '#words/said.ts';
import styles from './RoundScreen.module.css';
import { MOST_PIECE_G, meaning, roundView, unlikely } from './round-view.ts';

export type PieceWeighed = {
  grossG: number;
  typed: { text: string; unit: string };
  kept: boolean;
  weight: string;
};

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
  last: { text: string; undo: string; onUndo: () => void } | null;
  onWeighed: (weighed: PieceWeighed) => Promise<boolean>;
  onSkip: () => void;
}) {
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [question, setQuestion] = useState<string | null>(null);
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
    const odd = unlikely(net, piece);
    const weight = joined(mass(read.value, stepG, place));
    if (odd && !kept) {
      const beforeG = (pieceFigures(piece).last?.netG ?? piece.greenG) + piece.tareG;
      setQuestion(round[odd](weight, joined(mass(beforeG, stepG, place))));
      return;
    }
    await onWeighed({ grossG: read.value, typed: read.typed, kept, weight });
  };

  return (
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
        <Sentence
          small
          tokens={netG !== null && netG > 0 ? meaning(netG, piece, place, words) : said(round.waits)}
        />
      </div>
      <KeyedValue
        text={text}
        onText={(typed) => {
          setText(typed);
          setProblem(null);
        }}
        unit={view.unit}
        decimal={place.decimal}
        label={round.value}
        previous={view.previous}
        maxDecimals={view.decimals}
        {...(problem ? { problem } : {})}
        words={words.fields.keyboard}
      />
      {saved && (
        <SavedMark
          state={saved.state}
          text={last && saved.state === 'saved' ? `${last.text} ${saved.text}` : saved.text}
          act={
            last &&
            saved.state === 'saved' && (
              <Button kind="quiet" onPress={last.onUndo}>
                {last.undo}
              </Button>
            )
          }
        />
      )}
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
  );
}
