import { useState } from 'react';
import type { SubjectId } from '#record/subject.ts';
import { readCode, scannedPiece, tagCode } from '#record/tag-code.ts';
import { useBatches } from '#store/live.ts';
import { Button } from '#ui/Button.tsx';
import { CodeCamera, canReadCodes } from '#ui/CodeCamera.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { TextField } from '#ui/TextField.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import styles from './TagsScreen.module.css';

const pageOf = (piece: SubjectId) => `#/pieces/${piece.slice('piece:'.length)}`;

/** From a tag in the hand to its piece: by the camera where the browser reads codes, by its short code everywhere. */
export function FindTagScreen({ words }: { words: Words }) {
  const batches = useBatches();
  const [text, setText] = useState('');
  const [problem, setProblem] = useState<string | null>(null);
  const [looking, setLooking] = useState(false);
  const [said, setSaid] = useState<string | null>(null);
  const [several, setSeveral] = useState<readonly SubjectId[]>([]);
  if (batches === undefined) return <Waiting label={words.app.waiting} />;
  const { reader } = words.tags;
  const all = batches.flatMap((batch) => batch.pieces.map((piece) => ({ batch, piece })));

  const open = () => {
    const code = readCode(text);
    const found = all.filter(({ piece }) => code !== null && tagCode(piece.id) === code);
    setSeveral(found.length > 1 ? found.map(({ piece }) => piece.id) : []);
    const [first] = found;
    if (first && found.length === 1) window.location.hash = pageOf(first.piece.id);
    else setProblem(code === null ? reader.needed : found.length > 1 ? reader.several : reader.unknown);
  };
  const seen = (scanned: string) => {
    const id = scannedPiece(scanned);
    if (id && all.some(({ piece }) => piece.id === id)) window.location.hash = pageOf(id);
    else setSaid(reader.other);
  };

  return (
    <Page
      title={reader.title}
      back={{ href: '#/batches', label: words.batches.title }}
      sentence={canReadCodes() ? reader.sentence : reader.noCamera}
    >
      {canReadCodes() && (
        <>
          {looking && (
            <CodeCamera
              label={reader.seeing}
              className={styles.camera}
              onText={seen}
              onRefused={() => {
                setLooking(false);
                setSaid(reader.refused);
              }}
            />
          )}
          <Button onPress={() => setLooking(!looking)}>{looking ? reader.stop : reader.start}</Button>
        </>
      )}
      {said && <Notice kind="error">{said}</Notice>}
      <form
        className={styles.form}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          open();
        }}
      >
        <TextField
          label={reader.label}
          hint={reader.hint}
          text={text}
          onText={(typed) => {
            setText(typed);
            setProblem(null);
          }}
          maxLength={12}
          {...(problem ? { problem } : {})}
        />
        <Button submit kind="primary">
          {reader.go}
        </Button>
      </form>
      {several.length > 0 && (
        <List label={reader.title}>
          {all
            .filter(({ piece }) => several.includes(piece.id))
            .map(({ batch, piece }) => (
              <Row
                key={piece.id}
                href={pageOf(piece.id)}
                title={words.tags.piece(piece.number)}
                note={words.tags.line(batch.opened.body.formula.name, batch.opened.body.lot)}
              />
            ))}
        </List>
      )}
    </Page>
  );
}
