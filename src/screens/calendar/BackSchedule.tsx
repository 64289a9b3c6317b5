import { useMemo, useState } from 'react';
import type { MixFractions } from '#core/drying/water-activity.ts';
import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { DateTimeField } from '#ui/DateTimeField.tsx';
import { List, Row } from '#ui/List.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { readQuantity } from '#ui/quantity-input.ts';
import { Sentence } from '#ui/Sentence.tsx';
import { isCalendarDay } from '#words/days.ts';
import type { Words } from '#words/en.ts';
import { joined, temperature } from '#words/format.ts';
import { backView, freezing } from './back-view.ts';
import styles from './CalendarScreen.module.css';

/** From a wished date back to the day to begin. */
export function BackSchedule({
  today,
  given,
  mix,
  place,
  words,
}: {
  today: string;
  given: { diameterMm: number; targetLossPct: number; chamberC: number; humidityPct: number };
  mix: MixFractions;
  place: Place;
  words: Words;
}) {
  const text = (value: number) => String(value).replace('.', place.decimal);
  const [date, setDate] = useState('');
  const [diameter, setDiameter] = useState(text(given.diameterMm));
  const [target, setTarget] = useState(text(given.targetLossPct));
  const [humidity, setHumidity] = useState(text(given.humidityPct));
  const [freeze, setFreeze] = useState<'no' | 'yes'>('no');
  const [shown, setShown] = useState(false);
  const { back } = words.calendar;
  const { decimal } = place;
  const mm = readQuantity({ text: diameter, unit: 'mm', decimal, least: 30, most: 110 });
  const loss = readQuantity({ text: target, unit: '%', decimal, least: 10, most: 60 });
  const rh = readQuantity({ text: humidity, unit: '%', decimal, least: 50, most: 95 });
  const table = freezing(place.ruleSet);
  const dateOk = isCalendarDay(date) && date > today;
  const problem = (read: typeof mm, least: string, most: string) =>
    shown && !read.ok ? { problem: words.fields.problem(read.problem, { least, most }) } : {};
  const wanted = shown && dateOk && mm.ok && loss.ok && rh.ok;
  const view = useMemo(
    () =>
      wanted
        ? backView({
            date,
            today,
            wish: {
              mix,
              diameterMm: mm.value,
              targetLossPct: loss.value,
              chamberC: given.chamberC,
              humidityPct: rh.value,
            },
            freezeDays: freeze === 'yes' ? (table?.days ?? 0) : 0,
            place,
            words,
          })
        : null,
    [wanted, date, today, mix, mm, loss, rh, given.chamberC, freeze, table, place, words],
  );
  return (
    <section className={styles.back}>
      <h2>{back.title}</h2>
      <form
        className={styles.form}
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          setShown(true);
        }}
      >
        <DateTimeField
          kind="date"
          label={back.date}
          text={date}
          onText={setDate}
          earliest={today}
          {...(shown && !dateOk ? { problem: back.badDate } : {})}
        />
        <NumberField
          label={back.diameter}
          text={diameter}
          onText={setDiameter}
          unit="mm"
          {...problem(mm, '30 mm', '110 mm')}
        />
        <NumberField
          label={back.target}
          text={target}
          onText={setTarget}
          unit="%"
          {...problem(loss, '10 %', '60 %')}
        />
        <NumberField
          label={back.humidity}
          text={humidity}
          onText={setHumidity}
          unit="%"
          {...problem(rh, '50 %', '95 %')}
        />
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
      {view && (
        <div className={styles.answer} aria-live="polite">
          <Sentence tokens={view.sentence} />
          <List label={back.title}>
            {view.rows.map(({ key, title, note, steps }) => (
              <Row key={key} title={title} note={`${note} · ${steps}`} />
            ))}
          </List>
          {view.still && (
            <>
              <h3>{back.still}</h3>
              <ul className={styles.still}>
                {view.still.map((each) => (
                  <li key={each}>{each}</li>
                ))}
              </ul>
            </>
          )}
          <p className={styles.small}>{view.counted}</p>
        </div>
      )}
    </section>
  );
}
