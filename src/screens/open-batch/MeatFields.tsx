import type { Place } from '#record/place.ts';
import { NumberField } from '#ui/NumberField.tsx';
import type { Words } from '#words/en.ts';
import { type MeatRead, type MeatTexts, meatUnit } from './meat-input.ts';
import styles from './OpenBatchScreen.module.css';

/** The meat that lies ready: the weigh-out is counted against it. */
export function MeatFields({
  texts,
  read,
  onTexts,
  place,
  words,
}: {
  texts: MeatTexts;
  read: MeatRead;
  onTexts: (texts: MeatTexts) => void;
  place: Place;
  words: Words;
}) {
  const say = words.openBatch;
  const problems = read.ok ? {} : read.problems;
  return (
    <fieldset className={styles.group}>
      <legend>{say.meatReady}</legend>
      <p className={styles.small}>{say.meatHint}</p>
      <div className={styles.fields}>
        <NumberField
          label={say.meatField.meat}
          unit={meatUnit(place)}
          text={texts.meat}
          onText={(meat) => onTexts({ ...texts, meat })}
          {...(problems.meat ? { problem: problems.meat } : {})}
        />
        <NumberField
          label={say.meatField.trays}
          text={texts.trays}
          onText={(trays) => onTexts({ ...texts, trays })}
          {...(problems.trays ? { problem: problems.trays } : {})}
        />
      </div>
    </fieldset>
  );
}
