import { useState } from 'react';
import type { Role } from '#core/formula/formula.ts';
import type { EntryOf } from '#record/entry.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { newSubject } from '#store/append.ts';
import { useFormulas } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { useDraft } from '#store/use-draft.ts';
import { Ask } from '#ui/Ask.tsx';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import { TextField } from '#ui/TextField.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { editView, unlikelyText } from './edit-view.ts';
import styles from './FormulaEditScreen.module.css';
import { FormulaHead } from './FormulaHead.tsx';
import {
  addLine,
  draftBench,
  emptyDraft,
  type FormulaDraft,
  formulaDraft,
  moveLine,
  readFormulaDraft,
  removeLine,
  restoreDraft,
  setLine,
  typeTotalSalt,
  type Unlikely,
  unlikely,
} from './formula-draft.ts';
import { LineSheet } from './LineSheet.tsx';
import { newLine, roleOptions } from './line-draft.ts';
import { switchBasis } from './line-switch.ts';

type Props = { words: Words; place: Place; id: string };

export function FormulaEditScreen({ words, place, id }: Props) {
  const saved = useFormulas();
  const kept = useDraft(`formula-edit ${id || 'new'}`, restoreDraft);
  if (saved === undefined || kept.value === undefined) return <Waiting label={words.app.waiting} />;
  const versions = saved.find((each) => each.id === `formula:${id}`)?.versions ?? [];
  const newest = versions.at(-1);
  if (id !== '' && !newest) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  return <Editing {...{ words, place, id, versions, kept }} />;
}

const newId = () => newSubject('formula').slice('formula:'.length);

function Editing({
  words,
  place,
  id,
  versions,
  kept,
}: Props & {
  versions: readonly EntryOf<'formula-saved'>[];
  kept: ReturnType<typeof useDraft<FormulaDraft>>;
}) {
  const newest = versions.at(-1);
  const [first] = useState(() =>
    newest
      ? formulaDraft({ formula: newest.body.formula, from: newest.id }, place, words)
      : emptyDraft(newId, words),
  );
  const draft = kept.value ?? first;
  const [restored, setRestored] = useState(kept.value !== null);
  const [open, setOpen] = useState<string | null>(null);
  const [tried, setTried] = useState(false);
  const [asked, setAsked] = useState<readonly Unlikely[]>([]);
  const { saving, save } = useAppend(place.initials);
  const say = words.formulaEdit;
  const view = editView({ draft, number: versions.length + 1, tried, place, words });
  const line = draft.lines.find((each) => each.id === open);
  const mark = words.app.saving(saving);
  const read = readFormulaDraft(draft, place);

  const keep = async (keptCodes: readonly string[]) => {
    if (!read.ok) return;
    const subject: SubjectId = id === '' ? newSubject('formula') : `formula:${id}`;
    const { ok } = await save([
      {
        kind: 'formula-saved',
        subject,
        body: {
          formula: read.formula,
          note: draft.versionNote.trim(),
          ...(draft.from ? { from: { formula: subject, entry: draft.from } } : {}),
          ...(keptCodes.length > 0 ? { kept: [...keptCodes] } : {}),
        },
      },
    ]);
    if (!ok) return;
    await kept.drop();
    window.location.hash = `#/formulas/${subject.slice('formula:'.length)}`;
  };
  const trySave = () => {
    setTried(true);
    if (!read.ok) return;
    const questions = unlikely(read.formula);
    setAsked(questions);
    if (questions.length === 0) void keep([]);
  };
  const add = (role: Role) => {
    const added = newLine(newId(), role, words);
    kept.set(addLine(draft, added));
    setOpen(added.id);
  };

  return (
    <Page
      title={newest ? say.title : say.titleNew}
      {...(newest ? { line: newest.body.formula.name } : {})}
      back={{ href: newest ? `#/formulas/${id}` : '#/formulas', label: words.app.back }}
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
            <Button
              kind="quiet"
              onPress={() => {
                setRestored(false);
                void kept.drop();
              }}
            >
              {say.startOver}
            </Button>
          }
        >
          {say.restored}
        </Notice>
      )}
      {newest && draft.from !== '' && draft.from !== newest.id && (
        <Notice kind="caution">{say.changed}</Notice>
      )}
      <FormulaHead {...{ draft, place, words }} problems={view.problems} onDraft={kept.set} />
      {view.doubts.length > 0 && <Notice kind="caution">{view.doubts.join(' ')}</Notice>}
      <section className={styles.lines}>
        <h2>{say.lines}</h2>
        <p className={styles.hint}>{say.linesHint}</p>
        <List label={say.lines} ordered>
          {view.rows.map(({ id: lineId, title, note }) => (
            <Row key={lineId} title={title} note={note} onPress={() => setOpen(lineId)} />
          ))}
        </List>
        <Button onPress={() => setOpen('add')}>{say.add}</Button>
      </section>
      <TextField
        label={say.versionNote}
        hint={say.versionHint}
        long
        maxLength={400}
        text={draft.versionNote}
        onText={(versionNote) => kept.set({ ...draft, versionNote })}
      />
      {mark && <SavedMark state={mark.state} text={mark.text} />}
      {line && (
        <LineSheet
          key={line.id}
          {...{ line, place, words }}
          onLine={(changed) => kept.set(setLine(draft, changed))}
          onTotalSalt={(text) => typeTotalSalt(draft, line, text, place, words)}
          onBasis={(basis) =>
            kept.set(
              setLine(draft, switchBasis({ line, basis, bench: draftBench(draft, place), place, words })),
            )
          }
          onMove={(by) => kept.set(moveLine(draft, line.id, by))}
          onRemove={() => {
            kept.set(removeLine(draft, line.id));
            setOpen(null);
          }}
          onClose={() => setOpen(null)}
        />
      )}
      <Sheet
        open={open === 'add'}
        onClose={() => setOpen((now) => (now === 'add' ? null : now))}
        title={say.addTitle}
        closeLabel={words.app.close}
      >
        <List label={say.addTitle}>
          {roleOptions(words).map(({ value, label }) => (
            <Row key={value} title={label} onPress={() => add(value)} />
          ))}
        </List>
      </Sheet>
      {asked[0] && read.ok && (
        <Ask
          question={unlikelyText(asked[0], read.formula, place, words)}
          changeLabel={words.app.change}
          keepLabel={words.app.keep}
          onChange={() => setAsked([])}
          onKeep={() => {
            const rest = asked.slice(1);
            setAsked(rest);
            if (rest.length === 0) void keep([...new Set(unlikely(read.formula).map(({ code }) => code))]);
          }}
        />
      )}
    </Page>
  );
}
