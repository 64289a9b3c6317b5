import { useState } from 'react';
import type { Formula } from '#core/formula/formula.ts';
import type { EntryOf } from '#record/entry.ts';
import type { Place, Scale } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { benchScales } from '#record/weigh-out-figures.ts';
import { useFormulas, useKit } from '#store/live.ts';
import { useDraft } from '#store/use-draft.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { Figure, Figures } from '#ui/Figure.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { BenchFields } from './BenchFields.tsx';
import { firstBench, readBench, restoreBench } from './bench-input.ts';
import { Findings } from './Findings.tsx';
import styles from './FormulaScreen.module.css';
import { formulaView, type ShownBase, shownBases } from './formula-view.ts';
import { VersionsSheet } from './VersionsSheet.tsx';
import { versionLine } from './versions-view.ts';

type Props = { words: Words; place: Place; id: string };

export function FormulaScreen({ words, place, id }: Props) {
  const saved = useFormulas();
  const kit = useKit();
  if (saved === undefined || kit === undefined) return <Waiting label={words.app.waiting} />;
  const subject: SubjectId = `formula:${id}`;
  const versions = saved.find((each) => each.id === subject)?.versions ?? [];
  const newest = versions.at(-1);
  if (!newest) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  return (
    <Shown
      key={subject}
      {...{ words, place, id, versions, newest }}
      scales={kit.scales}
      saved={saved.flatMap((each) => each.versions)}
    />
  );
}

function Shown({
  words,
  place,
  id,
  versions,
  newest,
  scales,
  saved,
}: Props & {
  versions: readonly EntryOf<'formula-saved'>[];
  newest: EntryOf<'formula-saved'>;
  scales: readonly Scale[];
  saved: readonly EntryOf<'formula-saved'>[];
}) {
  const [chosen, setChosen] = useState<string | null>(null);
  const [base, setBase] = useState<ShownBase>('written');
  const [sheet, setSheet] = useState<'versions' | null>(null);
  const version = versions.find((each) => each.id === chosen) ?? newest;
  const formula: Formula = version.body.formula;
  const kept = useDraft(`formula-bench ${id}`, restoreBench);
  if (kept.value === undefined) return <Waiting label={words.app.waiting} />;
  const texts = kept.value ?? firstBench(formula, place, words);
  const { bench, problems } = readBench({ texts, formula, place, words });
  const view = formulaView({ formula, bench, scales, benchScales: benchScales(scales), base, place, words });
  const say = words.formulas;
  return (
    <Page
      title={formula.name}
      line={versionLine(version, versions, words)}
      back={{ href: '#/formulas', label: say.title }}
      sentence={view.sentence}
      acts={
        <>
          <Button href={`#/formulas/${id}/edit`}>{say.edit}</Button>
          <Button kind="primary" href={`#/formulas/${id}/open`}>
            {say.open}
          </Button>
        </>
      }
    >
      <Findings findings={view.findings} ruleSet={view.ruleSet} words={words} />
      <BenchFields {...{ formula, texts, problems, place, words }} onTexts={kept.set} />
      <section className={styles.lines}>
        <h2>{view.linesHeading}</h2>
        <List label={view.linesHeading}>
          {view.lines.map(({ id: line, name, amount, mass, note }) => (
            <Row
              key={line}
              title={name}
              note={amount}
              figure={mass?.value ?? '–'}
              {...(mass ? { unit: mass.unit } : {})}
              figureNote={note}
            />
          ))}
        </List>
        {view.mix && <p className={styles.small}>{view.mix}</p>}
        {view.fat && <p className={styles.small}>{view.fat}</p>}
        <Choice label={say.shownAs} options={shownBases(words)} value={base} onValue={setBase} />
      </section>
      {scales.length === 0 && (
        <Notice
          kind="caution"
          act={
            <Button kind="quiet" href="#/kit/scales">
              {say.addScale}
            </Button>
          }
        >
          {say.noScale}
        </Notice>
      )}
      <Figures>
        {view.figures.map((figure) => (
          <Figure key={figure.label} {...figure} />
        ))}
      </Figures>
      <section className={styles.cautions}>
        <h2>{say.cautions}</h2>
        <ul>
          {[...view.cautions, words.app.caution.short].map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        <Button kind="quiet" href="#/hazards">
          {words.app.caution.more}
        </Button>
      </section>
      {formula.note && <p className={styles.note}>{formula.note}</p>}
      <Button onPress={() => setSheet('versions')}>{say.versions(versions.length)}</Button>
      <VersionsSheet
        open={sheet === 'versions'}
        onClose={() => setSheet(null)}
        {...{ versions, saved, place, words }}
        shown={version.id}
        onShow={(entry) => {
          setChosen(entry);
          setSheet(null);
        }}
      />
    </Page>
  );
}
