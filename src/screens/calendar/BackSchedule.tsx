import { useMemo, useState } from 'react';
import type { BackSchedule as Schedule } from '#core/drying/back-schedule.ts';
import { mixFromFat } from '#core/drying/equilibrium.ts';
import type { Batch } from '#record/batch.ts';
import { loads } from '#record/chamber-figures.ts';
import { tellingBatches } from '#record/drying-history.ts';
import { mixOf } from '#record/forecast-figures.ts';
import type { Chamber, Place } from '#record/place.ts';
import { hangsIn } from '#record/season.ts';
import type { SubjectId } from '#record/subject.ts';
import { useDrying } from '#store/use-drying.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { DateTimeField } from '#ui/DateTimeField.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import type { CalendarDay } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { joined, temperature } from '#words/format.ts';
import { BackAnswer } from './BackAnswer.tsx';
import { type BackTyped, givenBy, readBack } from './back-input.ts';
import { backView, freezing, leftForDrying } from './back-view.ts';
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
  const read = readBack(typed, { today, place, words });
  const problems = asked && !read.ok ? read.problems : {};
  const chamber = chambers.find(({ id }) => id === chamberId) ?? null;
  const waiting = ahead.some(isWaiting);
  const everInside = useMemo(
    () => batches.filter(({ hung }) => chamber && hung?.body.chamber === chamber.id),
    [batches, chamber],
  );
  const freezeDays = freeze === 'yes' ? (table?.days ?? 0) : 0;
  const wished = useMemo(() => {
    const given = asked && readBack(asked, { today, place, words });
    if (!given?.ok) return null;
    const mix = last ? mixOf(last) : mixFromFat(USUAL_FAT);
    return { ...given.read, freezeDays, mix, chamberC: givenBy(last, place).chamberC, chamberId };
  }, [asked, today, last, freezeDays, chamberId, place, words]);
  const task = useMemo(
    () =>
      wished && {
        sum: 'plan' as const,
        given: {
          wish: wished,
          batches: tellingBatches(chamber ? everInside : batches, nowMs),
          nowMs,
          leftDays: leftForDrying({ ...wished, today }),
        },
      },
    [wished, chamber, everInside, batches, nowMs, today],
  );
  const { answer, of, failed } = useDrying(task);
  const plan = of !== null && of.given.wish === wished ? answer : null;
  const hasFailed = failed !== null && failed.given.wish === wished;
  const view = useMemo(() => {
    if (!wished || !plan || waiting) return null;
    const lot = chamber && {
      name: chamber.name,
      places: placesOf(chamber),
      stays: staysIn(chamber.id, { ahead, chambers, nowMs }),
      hanging: loads(ahead.filter(({ batch }) => hangsIn(batch, chamber))),
      everInside,
    };
    return backView(
      { ...wished, today, wish: wished, plan, lot: lot && { ...wished, chamber: lot } },
      { place, words },
    );
  }, [wished, plan, waiting, chamber, everInside, ahead, chambers, nowMs, today, place, words]);
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
      {wished && asked === typed && !view && (
        <p role="status">{hasFailed && !plan ? back.failed : back.working}</p>
      )}
      {view && asked === typed && (
        <BackAnswer view={view} words={words} onPass={() => onPass(view.schedule, asked.date)} />
      )}
    </section>
  );
}
