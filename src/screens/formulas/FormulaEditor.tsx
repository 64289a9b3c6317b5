import { useState } from 'react';
import type { EntryOf } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { newSubject } from '#store/append.ts';
import { useAppend } from '#store/use-append.ts';
import type { Kept } from '#store/use-draft.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import { DraftLines, newLineId } from './DraftLines.tsx';
import { type Unlikely, unlikely } from './draft-edits.ts';
import { editView, unlikelyText } from './edit-view.ts';
import { FormulaHead } from './FormulaHead.tsx';
import { emptyDraft, type FormulaDraft, formulaDraft, readFormulaDraft } from './formula-draft.ts';
import { formulaHref } from './formulas-view.ts';

/** A formula being typed: every key is kept, and a save adds a version. */
export function FormulaEditor({
  words,
  place,
  id,
  versions,
  kept,
}: {
  words: Words;
  place: Place;
  id: string;
  versions: readonly EntryOf<'formula-saved'>[];
  kept: Kept<FormulaDraft>;
}) {
  const newest = versions.at(-1);
  const [first] = useState(() =>
    newest
      ? formulaDraft({ formula: newest.body.formula, from: newest.id }, place, words)
      : emptyDraft(newLineId, words),
  );
  const draft = kept.value ?? first;
  const [restored, setRestored] = useState(kept.value !== null);
  const [tried, setTried] = useState(false);
  const [asked, setAsked] = useState<readonly Unlikely[]>([]);
  const { saving, save } = useAppend(place.initials);
  const say = words.formulaEdit;
  const view = editView({ draft, number: versions.length + 1, tried, place, words });
  const read = readFormulaDraft(draft, place);
  const mark = words.app.saving(saving);

  const keep = async (codes: readonly string[]) => {
    if (!read.ok) return;
    const subject: SubjectId = id === '' ? newSubject('formula') : `formula:${id}`;
    const from = draft.from === '' ? {} : { from: { formula: subject, entry: draft.from } };
    const kinds = codes.length > 0 ? { kept: [...new Set(codes)] } : {};
    const body = { formula: read.formula, note: draft.versionNote.trim(), ...from, ...kinds };
    const { ok } = await save([{ kind: 'formula-saved', subject, body }]);
    if (!ok) return;
    await kept.drop();
    window.location.hash = formulaHref(subject);
  };
  const trySave = () => {
    setTried(true);
    if (!read.ok) return;
    const questions = unlikely(read.formula);
    setAsked(questions);
    if (questions.length === 0) void keep([]);
  };
  const startOver = () => {
    setRestored(false);
    void kept.drop();
  };

  return (
    <Page
      title={newest ? say.title : say.titleNew}
      {...(newest ? { line: newest.body.formula.name } : {})}
      back={{ href: newest ? formulaHref(newest.subject) : '#/formulas', label: words.app.back }}
      sentence={view.sentence}
      acts={
        <Button kind="primary" disabled={saving.state === 'saving'} onPress={trySave}>
          {say.save(versions.length + 1)}
        </Button>
      }
      actsNote={view.hindered ?? view.sums}
    >
      {restored && (
        <Notice
          kind="saved"
          act={
            <Button kind="quiet" onPress={startOver}>
              {say.startOver}
            </Button>
          }
        >
          {say.restored}
        </Notice>
      )}
      {newest && draft.from !== newest.id && <Notice kind="caution">{say.changed}</Notice>}
      <FormulaHead {...{ draft, place, words }} problems={view.problems} onDraft={kept.set} />
      {view.doubts.length > 0 && <Notice kind="caution">{view.doubts.join(' ')}</Notice>}
      <DraftLines {...{ draft, place, words }} rows={view.rows} onDraft={kept.set} />
      <TextField
        label={say.versionNote}
        hint={say.versionHint}
        long
        maxLength={400}
        text={draft.versionNote}
        onText={(versionNote) => kept.set({ ...draft, versionNote })}
      />
      {mark && <SavedMark state={mark.state} text={mark.text} />}
      {asked[0] && read.ok && (
        <Ask
          key={`${asked[0].code} ${asked[0].lineId}`}
          question={unlikelyText(asked[0], read.formula, place, words)}
          changeLabel={words.app.change}
          keepLabel={words.app.keep}
          onChange={() => setAsked([])}
          onKeep={() => {
            setAsked(asked.slice(1));
            if (asked.length === 1) void keep(unlikely(read.formula).map(({ code }) => code));
          }}
        />
      )}
    </Page>
  );
}
