import { useState } from 'react';
import type { Piece } from '#record/piece.ts';
import type { SubjectId } from '#record/subject.ts';
import { scannedPiece } from '#record/tag-code.ts';
import { Button } from '#ui/Button.tsx';
import { CodeCamera, canReadCodes } from '#ui/CodeCamera.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import styles from './RoundScreen.module.css';

/** A piece by its tag: held before the camera where the browser reads codes, else by its number, as large as a cold thumb needs. */
export function FindPiece({
  pieces,
  weighed,
  words,
  onPiece,
  onClose,
}: {
  pieces: readonly Piece[];
  weighed: readonly Piece[];
  words: Words;
  onPiece: (piece: SubjectId) => void;
  onClose: () => void;
}) {
  const [looking, setLooking] = useState(false);
  const [said, setSaid] = useState<string | null>(null);
  const { round } = words;
  const { reader } = words.tags;
  const seen = (scanned: string) => {
    const found = pieces.find(({ id }) => id === scannedPiece(scanned));
    if (found) onPiece(found.id);
    else setSaid(round.otherTag);
  };
  return (
    <Sheet open onClose={onClose} title={round.findTitle} closeLabel={words.app.close}>
      {canReadCodes() && (
        <>
          {looking && (
            <CodeCamera
              label={reader.seeing}
              className={styles.camera}
              onText={seen}
              onRefused={() => {
                setLooking(false);
                setSaid(round.noCamera);
              }}
            />
          )}
          <Button
            onPress={() => {
              setLooking(!looking);
              setSaid(null);
            }}
          >
            {looking ? reader.stop : reader.start}
          </Button>
        </>
      )}
      {said && <Notice kind="error">{said}</Notice>}
      <p>{round.findText}</p>
      <ol className={styles.pieces}>
        {pieces.map((piece) => {
          const done = weighed.includes(piece);
          return (
            <li key={piece.id}>
              <button
                type="button"
                className={styles.place}
                aria-label={round.toWeigh(piece.number, done)}
                onClick={() => onPiece(piece.id)}
              >
                {piece.number}
                {done && <span className={styles.weighed}>{round.weighedNow}</span>}
              </button>
            </li>
          );
        })}
      </ol>
    </Sheet>
  );
}
