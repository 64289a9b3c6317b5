import { memo, useState } from 'react';
import type { AirWish } from '#record/drying-rehearsal.ts';
import type { Place } from '#record/place.ts';
import { Slider } from '#ui/Slider.tsx';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import { mixOfFat, NEW_FAT_PCT } from './start.ts';
import styles from './WhatIfScreen.module.css';

/** Air speeds between a closed cupboard and a fan on the pieces. */
const AIR_M_PER_S = [0.05, 0.1, 0.2, 0.3, 0.5, 0.8] as const;

/** Air and target of any piece; of a batch that does not exist also its calibre and its fat. */
export const Sliders = memo(function Sliders({
  wish,
  onWish,
  place,
  words,
}: {
  wish: AirWish;
  onWish: (wish: AirWish) => void;
  place: Place;
  words: Words;
}) {
  const say = words.whatIf.sliders;
  const [fatPct, setFatPct] = useState(NEW_FAT_PCT);
  const percent = (value: number) => `${decimal(value, 0, place)}\u00a0%`;
  const speed = AIR_M_PER_S.findIndex((each) => each >= wish.airMPerS);
  return (
    <section className={styles.sliders}>
      <h2>{say.title}</h2>
      <Slider
        label={say.humidity}
        text={percent(wish.humidityPct)}
        value={wish.humidityPct}
        least={60}
        most={95}
        step={1}
        onValue={(humidityPct) => onWish({ ...wish, humidityPct })}
      />
      <Slider
        label={say.temperature}
        text={joined(temperature(wish.chamberC, place))}
        value={wish.chamberC}
        least={5}
        most={22}
        step={0.5}
        onValue={(chamberC) => onWish({ ...wish, chamberC })}
      />
      <Slider
        label={say.airSpeed}
        text={say.metresPerSecond(words.workings.exactly(wish.airMPerS, place))}
        value={speed}
        least={0}
        most={AIR_M_PER_S.length - 1}
        step={1}
        onValue={(at) => onWish({ ...wish, airMPerS: AIR_M_PER_S[at] ?? wish.airMPerS })}
      />
      {wish.past === null && (
        <>
          <Slider
            label={say.diameter}
            text={`${decimal(wish.diameterMm, 0, place)}\u00a0mm`}
            value={wish.diameterMm}
            least={30}
            most={110}
            step={1}
            onValue={(diameterMm) => onWish({ ...wish, diameterMm })}
          />
          <Slider
            label={say.fat}
            text={percent(fatPct)}
            value={fatPct}
            least={10}
            most={45}
            step={1}
            onValue={(pct) => {
              setFatPct(pct);
              onWish({ ...wish, mix: mixOfFat(pct) });
            }}
          />
        </>
      )}
      <Slider
        label={say.target}
        text={percent(wish.targetLossPct)}
        value={wish.targetLossPct}
        least={20}
        most={50}
        step={1}
        onValue={(targetLossPct) => onWish({ ...wish, targetLossPct })}
      />
    </section>
  );
});
