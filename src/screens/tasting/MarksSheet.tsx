import { useState } from 'react';
import type { BodyOf } from '#record/kinds.ts';
import { ASPECTS, type Aspect } from '#record/tasting.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { SavedMark, type SavedState } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';

const MARKS = ['1', '2', '3', '4', '5'] as const;
type Mark = (typeof MARKS)[number];

/** Five marks of one taster. None is set beforehand: a mark that nobody gave would count. */
export function MarksSheet({
  title,
  initials,
  words,
  saved,
  onSave,
  onClose,
}: {
  title: string;
  initials: string;
  words: Words;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: Omit<BodyOf<'tasted'>, 'blind'>) => void;
  onClose: () => void;
}) {
  const [taster, setTaster] = useState(initials);
  const [marks, setMarks] = useState<Partial<Record<Aspect, Mark>>>({});
  const [note, setNote] = useState('');
  const [shown, setShown] = useState(false);
  const say = words.tasting.sheet;

  const save = () => {
    setShown(true);
    const { look, smell, bite, taste, overall } = marks;
    if (!taster.trim() || !look || !smell || !bite || !taste || !overall) return;
    onSave({
      taster: taster.trim(),
      look: Number(look),
      smell: Number(smell),
      bite: Number(bite),
      taste: Number(taste),
      overall: Number(overall),
      ...(note.trim() ? { note: note.trim() } : {}),
    });
  };

  return (
    <Sheet
      open
      onClose={onClose}
      title={title}
      closeLabel={words.app.close}
      acts={
        <Button kind="primary" onPress={save} disabled={saved?.state === 'saving'}>
          {say.save}
        </Button>
      }
    >
      <TextField
        label={say.taster}
        text={taster}
        onText={setTaster}
        capitals="none"
        maxLength={40}
        {...(shown && !taster.trim() ? { problem: say.tasterNeeded } : {})}
      />
      <p>{say.scale}</p>
      {ASPECTS.map((aspect) => (
        <Choice
          key={aspect}
          inRow
          label={words.tasting.aspects[aspect]}
          options={MARKS.map((mark) => ({ value: mark, label: mark }))}
          value={marks[aspect] ?? null}
          onValue={(mark) => setMarks({ ...marks, [aspect]: mark })}
          {...(shown && !marks[aspect] ? { problem: say.choose } : {})}
        />
      ))}
      <TextField label={say.note} hint={say.noteHint} text={note} onText={setNote} maxLength={2000} long />
      {saved && <SavedMark state={saved.state} text={saved.text} />}
    </Sheet>
  );
}
