import type { Formula } from '#core/formula/formula.ts';
import type { BenchScale } from '#core/formula/scale.ts';
import type { Place } from '#record/place.ts';
import { newSubject } from '#store/append.ts';
import { useAppend } from '#store/use-append.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { SavedMark } from '#ui/SavedMark.tsx';
import type { Words } from '#words/en.ts';
import { CasingSheet, LabelSheet, SugarSheet, WaysSheet } from './CalcSheets.tsx';
import { CompositionSheet } from './CompositionSheet.tsx';
import type { Version } from './FormulaPage.tsx';
import styles from './FormulaScreen.module.css';
import type { FormulaPlan } from './formula-plan.ts';
import { cardHref, formulaHref } from './formulas-view.ts';
import { PiecesSheet } from './PiecesSheet.tsx';
import { ShareSheet } from './ShareSheet.tsx';
import { VersionsSheet } from './VersionsSheet.tsx';
import type { WaysView } from './ways-view.ts';

export type SheetName =
  | 'ways'
  | 'casing'
  | 'sugar'
  | 'pieces'
  | 'composition'
  | 'label'
  | 'share'
  | 'versions';

/** A whole muscle is neither stuffed nor soured. */
const OF_A_MIX = ['ways', 'casing', 'sugar'] as const;

/** What else can be done with a formula: each row opens its sheet. */
export function FormulaSheets({
  open,
  onOpen,
  formula,
  plan,
  version,
  versions,
  saved,
  scales,
  onShow,
  onMeat,
  place,
  words,
}: {
  open: SheetName | null;
  onOpen: (sheet: SheetName | null) => void;
  formula: Formula;
  plan: FormulaPlan | null;
  version: Version;
  versions: readonly Version[];
  saved: readonly Version[];
  scales: readonly BenchScale[];
  onShow: (version: string) => void;
  onMeat: (meat: NonNullable<WaysView['meat']>) => void;
  place: Place;
  words: Words;
}) {
  const { saving, save } = useAppend(place.initials);
  const say = words.formulas;
  const more = words.formulaSheets;
  const close = () => onOpen(null);
  const shared = { formula, plan, place, words, onClose: close };
  const mark = words.app.saving(saving);
  const copy = async () => {
    const subject = newSubject('formula');
    const number = versions.findIndex(({ id }) => id === version.id) + 1;
    const { ok } = await save([
      {
        kind: 'formula-saved',
        subject,
        refs: [version.subject],
        body: {
          formula: { ...formula, name: say.copyName(formula.name).slice(0, 80) },
          note: say.copyNote(formula.name, number),
          from: { formula: version.subject, entry: version.id },
        },
      },
    ]);
    if (ok) window.location.hash = formulaHref(subject);
  };
  return (
    <section className={styles.more}>
      <h2>{more.heading}</h2>
      <List label={more.heading}>
        {formula.kind === 'comminuted' &&
          OF_A_MIX.map((sheet) => (
            <Row key={sheet} title={more[sheet].title} note={more[sheet].row} onPress={() => onOpen(sheet)} />
          ))}
        {formula.kind === 'whole-muscle' && (
          <Row title={more.pieces.title} note={more.pieces.row} onPress={() => onOpen('pieces')} />
        )}
        {plan && (
          <Row
            title={more.composition.title}
            note={more.composition.row}
            onPress={() => onOpen('composition')}
          />
        )}
        {plan && <Row title={more.label.title} note={more.label.row} onPress={() => onOpen('label')} />}
        <Row
          title={say.history.heading}
          note={say.versions(versions.length)}
          onPress={() => onOpen('versions')}
        />
        <Row title={more.card.title} note={more.card.row} href={cardHref(version, versions)} />
        <Row title={more.share.title} note={more.share.row} onPress={() => onOpen('share')} />
      </List>
      <Button kind="quiet" disabled={saving.state === 'saving'} onPress={() => void copy()}>
        {say.copy}
      </Button>
      {mark?.state === 'not-saved' && <SavedMark state={mark.state} text={mark.text} />}
      {open === 'ways' && (
        <WaysSheet
          {...shared}
          onMeat={(meat) => {
            onMeat(meat);
            close();
          }}
        />
      )}
      {open === 'casing' && <CasingSheet {...shared} />}
      {open === 'sugar' && <SugarSheet {...shared} subject={version.subject} />}
      {open === 'pieces' && <PiecesSheet {...{ formula, place, words }} scales={scales} onClose={close} />}
      {open === 'composition' && plan && <CompositionSheet {...shared} plan={plan} />}
      {open === 'label' && plan && <LabelSheet {...shared} plan={plan} />}
      {open === 'share' && <ShareSheet version={version} words={words} onClose={close} />}
      <VersionsSheet
        open={open === 'versions'}
        onClose={close}
        {...{ versions, saved, place, words }}
        shown={version.id}
        onShow={(entry) => {
          onShow(entry);
          close();
        }}
      />
    </section>
  );
}
