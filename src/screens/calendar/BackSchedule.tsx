import { useMemo, useState } from 'react';
import type { BackSchedule as Schedule } from '#core/drying/back-schedule.ts';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import type { Batch } from '#record/batch.ts';
import { loads } from '#record/chamber-figures.ts';
import { dryingHistory } from '#record/drying-history.ts';
import { mixOf } from '#record/forecast-figures.ts';
import type { Chamber, Place } from '#record/place.ts';
import { hangsIn } from '#record/season.ts';
import type { SubjectId } from '#record/subject.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { DateTimeField } from '#ui/DateTimeField.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import type { CalendarDay } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { joined, temperature } from '#words/format.ts';
import { BackAnswer } from './BackAnswer.tsx';
import { type BackTyped, givenBy, readBack } from './back-input.ts';
import { backView, freezing } from './back-view.ts';
import styles from './CalendarScreen.module.css';
import { type Ahead, isWaiting } from './calendar-view.ts';
import { placesOf, staysIn } from './rails-view.ts';

/** A mix where no batch says otherwise. Common practice. */
const USUAL_FAT = { fatFraction: 0.25, saltFraction: 0.028, sugarFraction: 0.003 };

/** From a wished date back to the day to begin. */
export function BackSchedule({
  today,
  batches,
  ahead,
  chambers,
  nowMs,
  place,
  words,
  onPass,
}: {
  today: CalendarDay;
  batches: readonly Batch[];
  ahead: readonly Ahead[];
  chambers: readonly Chamber[];
  nowMs: number;
  place: Place;
  words: Words;
  onPass: (schedule: Schedule, date: CalendarDay) => void;
}) {
  const [last] = batches;
  const [typed, setTyped] = useState<BackTyped>(() => givenBy(last, place).typed);
  const [chamberId, setChamberId] = useState<SubjectId | null>(
    last?.hung?.body.chamber ?? chambers[0]?.id ?? null,
  );
  const [freeze, setFreeze] = useState<'no' | 'yes'>('no');
  /** What was asked last: an answer stands only while the fields say the same. */
  const [asked, setAsked] = useState<BackTyped | null>(null);
  const { back } = words.calendar;
  const table = freezing(place.ruleSet);
  const answer = readBack(typed, { today, place, words });
  const problems = asked && !answer.ok ? answer.problems : {};
  const chamber = chambers.find(({ id }) => id === chamberId) ?? null;
  const wanted = asked !== null;
  const waiting = ahead.some(isWaiting);
  const known = useMemo(() => {
    if (!wanted || waiting) return null;
    const everInside = batches.filter(({ hung }) => chamber && hung?.body.chamber === chamber.id);
    return {
      history: dryingHistory(chamber ? everInside : batches, nowMs),
      lot: chamber && {
        name: chamber.name,
        places: placesOf(chamber),
        stays: staysIn(chamber.id, { ahead, chambers, nowMs }),
        hanging: loads(ahead.filter(({ batch }) => hangsIn(batch, chamber))),
        everInside,
      },
    };
  }, [wanted, waiting, batches, ahead, chambers, chamber, nowMs]);
  const freezeDays = freeze === 'yes' ? (table?.days ?? 0) : 0;
  const view = useMemo(() => {
    const given = asked && readBack(asked, { today, place, words });
    if (!known || !given?.ok) return null;
    const mix = last ? mixOf(last) : mixFromFat(USUAL_FAT);
    return backView(
      {
        date: given.read.date,
        today,
        wish: { ...given.read, mix, chamberC: givenBy(last, place).chamberC },
        freezeDays,
        history: known.history,
        lot: known.lot && { ...given.read, chamber: known.lot },
      },
      { place, words },
    );
  }, [asked, known, today, last, freezeDays, place, words]);
  const field = (name: Exclude<keyof BackTyped, 'date'>, label: string, unit: string) => (
    <NumberField
      label={label}
      text={typed[name]}
      onText={(text) => setTyped({ ...typed, [name]: text })}
      {...(unit ? { unit } : {})}
      {...(problems[name] === undefined ? {} : { problem: problems[name] })}
    />
  );
  return (
    <section className={styles.back}>
      <h2>{back.title}</h2>
      <form
        className={styles.form}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          setAsked(typed);
        }}
      >
        <DateTimeField
          kind="date"
          label={back.date}
          text={typed.date}
          onText={(date) => setTyped({ ...typed, date })}
          earliest={today}
          {...(problems.date === undefined ? {} : { problem: problems.date })}
        />
        {field('diameter', back.diameter, 'mm')}
        {field('target', back.target, '%')}
        {field('humidity', back.humidity, '%')}
        {chambers.length > 1 && (
          <Choice<SubjectId>
            label={back.chamber}
            options={chambers.map(({ id, name }) => ({ value: id, label: name }))}
            value={chamberId}
            onValue={setChamberId}
          />
        )}
        {chambers.length > 0 && (
          <fieldset className={styles.form}>
            <legend>{back.lot}</legend>
            <p className={styles.small}>{back.lotHint}</p>
            {field('weight', back.weight, place.mass === 'metric' ? 'kg' : 'lb')}
            {field('pieces', back.pieces, '')}
          </fieldset>
        )}
        {table && (
          <>
            <Choice
              label={back.freeze}
              options={[
                { value: 'no', label: back.freezeNo },
                { value: 'yes', label: back.freezeYes(table.days, joined(temperature(table.atC, place, 0))) },
              ]}
              value={freeze}
              onValue={setFreeze}
            />
            {freeze === 'yes' && <p className={styles.small}>{back.freezeNote}</p>}
          </>
        )}
        <Button submit kind="primary">
          {back.act}
        </Button>
      </form>
      {waiting && answer.ok && asked === typed && <p role="status">{back.working}</p>}
      {view && asked === typed && (
        <BackAnswer view={view} words={words} onPass={() => onPass(view.schedule, asked.date)} />
      )}
    </section>
  );
}
