import { useCallback, useMemo, useState } from 'react';
import type { EntryOf } from '#record/entry.ts';
import type { Place, Scale } from '#record/place.ts';
import { benchScales } from '#record/weigh-out-figures.ts';
import type { Kept } from '#store/use-draft.ts';
import { Button } from '#ui/Button.tsx';
import { SliceDrawing } from '#ui/drawings/SliceDrawing.tsx';
import { Figure, Figures } from '#ui/Figure.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import type { Words } from '#words/en.ts';
import { BenchFields } from './BenchFields.tsx';
import { type BenchTexts, firstBench, meatTexts, readBench } from './bench-input.ts';
import { Cautions, Guards } from './Cautions.tsx';
import { Findings } from './Findings.tsx';
import { FormulaLines } from './FormulaLines.tsx';
import styles from './FormulaScreen.module.css';
import { FormulaSheets, type SheetName } from './FormulaSheets.tsx';
import { formulaView, type ShownBase } from './formula-view.ts';
import { versionLine } from './versions-view.ts';
import type { WaysView } from './ways-view.ts';

export type Version = EntryOf<'formula-saved'>;

export type FormulaPageProps = {
  words: Words;
  place: Place;
  id: string;
  versions: readonly Version[];
  newest: Version;
  /** The version to begin with; null for the newest. */
  first: string | null;
  kept: Kept<BenchTexts>;
  scales: readonly Scale[];
  saved: readonly Version[];
};

/** Drawn once: it does not follow what is typed. */
const SLICE = <SliceDrawing seed={7} />;

/** One version of a formula, scaled by the meat in the fields. */
export function FormulaPage(props: FormulaPageProps) {
  const { words, place, id, versions, newest, kept, scales, saved } = props;
  const [chosen, setChosen] = useState<string | null>(props.first);
  const [base, setBase] = useState<ShownBase>('written');
  const [sheet, setSheet] = useState<SheetName | null>(null);
  const version = versions.find((each) => each.id === chosen) ?? newest;
  const { formula } = version.body;
  const round = useMemo(() => firstBench(formula, place, words), [formula, place, words]);
  const texts = kept.value ?? round;
  /** Counts the times that the fields were filled from elsewhere than the keys. */
  const [filled, setFilled] = useState(0);
  const view = useMemo(() => {
    const { bench } = readBench({ texts, formula, place, words });
    const given = { formula, bench, scales, base, place, words };
    return formulaView({ ...given, benchScales: benchScales(scales) });
  }, [texts, formula, scales, base, place, words]);
  const lines = useMemo(
    () => <FormulaLines view={view} base={base} onBase={setBase} words={words} />,
    [view, base, words],
  );
  const findings = useMemo(
    () => (
      <>
        <Findings findings={view.findings} ruleSet={view.ruleSet} words={words} />
        <Guards guards={view.guards} words={words} />
      </>
    ),
    [view, words],
  );
  const figures = useMemo(
    () =>
      view.figures.length > 0 && (
        <div className={styles.figures}>
          <Figures>
            {view.figures.map((figure) => (
              <Figure key={figure.label} {...figure} />
            ))}
          </Figures>
          <div className={styles.slice}>{SLICE}</div>
        </div>
      ),
    [view],
  );
  const cautions = useMemo(() => <Cautions words={words} />, [words]);
  const { set } = kept;
  const onMeat = useCallback(
    (meat: NonNullable<WaysView['meat']>) => {
      set(meatTexts(meat, texts, place, words));
      setFilled((times) => times + 1);
    },
    [set, texts, place, words],
  );
  const sheets = useMemo(
    () => (
      <FormulaSheets
        open={sheet}
        onOpen={setSheet}
        {...{ formula, version, versions, saved, place, words, onMeat }}
        scales={benchScales(scales)}
        plan={view.plan}
        onShow={setChosen}
      />
    ),
    [sheet, formula, version, versions, saved, place, words, onMeat, scales, view],
  );
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
      {version !== newest && (
        <Notice
          kind="caution"
          act={
            <Button kind="quiet" onPress={() => setChosen(null)}>
              {say.history.toNewest}
            </Button>
          }
        >
          {say.history.newer(versions.length)}
        </Notice>
      )}
      {findings}
      <BenchFields key={`${version.id} ${filled}`} {...{ formula, texts, place, words }} onTexts={set} />
      {lines}
      {view.premixes.map((text) => (
        <Notice key={text} kind="caution">
          {text}
        </Notice>
      ))}
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
      {figures}
      {cautions}
      {formula.note && <p className={styles.note}>{formula.note}</p>}
      {sheets}
    </Page>
  );
}
