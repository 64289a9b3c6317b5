import { useState } from 'react';
import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import type { RuleSetId } from '#core/rules/rule.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import styles from './HoursAt.module.css';
import { firstDeg, HOURS_AT, hoursAt } from './hours-at.ts';

/** Hours left at any temperature: a slider, and two keys for who cannot or will not drag. */
export function HoursAt({
  clock,
  ruleSet,
  place,
  words,
}: {
  clock: FermentClock;
  ruleSet: RuleSetId;
  place: Place;
  words: Words;
}) {
  const [deg, setDeg] = useState(() => firstDeg(clock, place));
  const { least, most, step } = HOURS_AT[place.temperature];
  const say = words.fermentAhead.hoursAt;
  const view = hoursAt(clock, deg, { ruleSet, place, words });
  if (view === null) return null;
  const move = (by: number) => setDeg(Math.min(most, Math.max(least, deg + by)));
  return (
    <section className={styles.hours}>
      <h2>{say.title}</h2>
      <p className={styles.answer} aria-live="polite">
        <span className={styles.temperature}>{view.temperature}</span>
        <strong className={styles.left}>{view.left}</strong>
      </p>
      <div className={styles.row}>
        <button type="button" className={styles.key} aria-label={say.less} onClick={() => move(-step)}>
          −
        </button>
        <input
          className={styles.slider}
          type="range"
          aria-label={say.label}
          aria-valuetext={`${view.temperature}, ${view.left}`}
          min={least}
          max={most}
          step={step}
          value={deg}
          onChange={(event) => setDeg(Number(event.target.value))}
        />
        <button type="button" className={styles.key} aria-label={say.more} onClick={() => move(step)}>
          +
        </button>
      </div>
      <p className={styles.note}>{view.note}</p>
    </section>
  );
}
