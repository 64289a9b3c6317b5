import { Choice } from '#ui/Choice.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import type { Words } from '#words/en.ts';
import { type Answers, type lookedBody, mouldAdvice } from './mould-view.ts';

type Action = NonNullable<Parameters<typeof lookedBody>[1]>;

const optionsOf = <T extends string>(of: Readonly<Record<T, string>>) =>
  Object.entries<string>(of).map(([value, label]) => ({ value: value as T, label }));

/** Three questions, then what is usually done, then what was done: never the other way round. */
export function MouldQuestions({
  answers,
  action,
  sinceStuffingDays,
  words: { mould },
  onAnswers,
  onAction,
}: {
  answers: Answers;
  action: Action | null;
  sinceStuffingDays: number | null;
  words: Words;
  onAnswers: (answers: Answers) => void;
  onAction: (action: Action) => void;
}) {
  const { colour, texture, spread } = answers;
  const advice = mouldAdvice(answers, sinceStuffingDays);
  return (
    <>
      <Choice
        label={mould.colour}
        options={optionsOf(mould.colours)}
        value={colour}
        onValue={(value) => onAnswers({ ...answers, colour: value })}
      />
      {colour !== null && colour !== 'none' && (
        <>
          <Choice
            label={mould.texture}
            options={optionsOf(mould.textures)}
            value={texture}
            onValue={(value) => onAnswers({ ...answers, texture: value })}
          />
          <Choice
            label={mould.spread}
            options={optionsOf(mould.spreads)}
            value={spread}
            onValue={(value) => onAnswers({ ...answers, spread: value })}
          />
        </>
      )}
      {advice !== 'wait' && (
        <>
          <div aria-live="polite">
            <Sentence tokens={mould.advice[advice]} />
          </div>
          <Choice label={mould.action} options={optionsOf(mould.actions)} value={action} onValue={onAction} />
        </>
      )}
    </>
  );
}
