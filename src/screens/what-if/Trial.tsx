import { memo, useDeferredValue, useMemo, useState } from 'react';
import type { Place } from '#record/place.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { LossChart } from '#ui/charts/LossChart.tsx';
import { SliceDrawing } from '#ui/drawings/SliceDrawing.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import type { Words } from '#words/en.ts';
import { Sliders } from './Sliders.tsx';
import type { Start } from './start.ts';
import { useRehearsal, useRehearsed } from './use-rehearsal.ts';
import styles from './WhatIfScreen.module.css';
import {
  type WhatIfChartGiven,
  type WhatIfGiven,
  whatIfChart,
  whatIfSentence,
  whatIfView,
  whatIfWindow,
} from './what-if-view.ts';

const HOUR_MS = 3_600_000;

/** The slice as the air tried makes it, the days it takes, and the sliders that change it. */
export function Trial({
  start,
  title,
  line,
  back,
  place,
  words,
}: {
  start: Start;
  title: string;
  line: string;
  back: { href: string; label: string };
  place: Place;
  words: Words;
}) {
  const say = words.whatIf;
  const [wish, setWish] = useState(start.wish);
  const zone = zoneAt(useNowMs(HOUR_MS));
  const { newest, fine, problem } = useRehearsal(wish);
  const now = useRehearsed(start.wish.past ? start.wish : null);
  const { fromMs } = start;
  const given = useMemo(
    () => newest && { ...newest, fromMs, place, zone, words },
    [newest, fromMs, place, zone, words],
  );
  // The sentence first, then the slices; the chart, which takes a phone longer to draw than the sum took, once the slider is still.
  const slices = useDeferredValue(given);
  const chart = useDeferredValue(fine);
  return (
    <Page
      title={title}
      line={line}
      back={back}
      sentence={given ? whatIfSentence(given) : say.sentence.working}
    >
      {problem !== null && <Notice kind="error">{say.failed}</Notice>}
      {slices && <Slices given={slices} />}
      <Sliders wish={wish} onWish={setWish} place={place} words={words} />
      {chart && (
        <div className={styles.curve} aria-busy={chart.wish !== wish}>
          <Curve {...chart} now={now} place={place} words={words} />
        </div>
      )}
      <p className={styles.soft}>
        {[...(wish.past && newest?.tried.fits !== false ? [say.fitted] : []), say.note].join(' ')}
      </p>
      {wish.past && (
        <p>
          <a className={styles.link} href="#/what-if">
            {say.other}
          </a>
        </p>
      )}
    </Page>
  );
}

const Slices = memo(function Slices({ given }: { given: WhatIfGiven }) {
  const view = whatIfView(given);
  return (
    <>
      <section className={styles.slices} aria-label={given.words.whatIf.slices}>
        {view.slices.map(({ key, waterFromRim, label, caption, aw }) => (
          <figure key={key} className={styles.slice}>
            <div className={styles.drawing}>
              <SliceDrawing seed={7} waterFromRim={waterFromRim} label={label} />
            </div>
            <figcaption>
              {caption}
              <span className={styles.soft}>{aw}</span>
            </figcaption>
          </figure>
        ))}
      </section>
      {view.unfit ? (
        <Notice kind="caution">{view.unfit}</Notice>
      ) : view.rimLevel === 'high' ? (
        <Notice kind="caution">{view.rim}</Notice>
      ) : (
        <p>{view.rim}</p>
      )}
    </>
  );
});

/** Below the sliders, so that what comes late moves none of them. */
const Curve = memo(function Curve(given: WhatIfChartGiven) {
  const { words } = given;
  const say = words.whatIf.chart;
  const window = whatIfWindow(given);
  return (
    <>
      {window && <p>{window}</p>}
      <LossChart
        title={say.title}
        label={say.label}
        waitingLabel={words.hanging.chart.waiting}
        failedLabel={words.hanging.chart.failed}
        tableLabel={words.hanging.chart.table}
        {...whatIfChart(given)}
      />
    </>
  );
});
