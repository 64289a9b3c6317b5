import type { LoggerChoices, LoggerQuestion, LoggerRead } from '#files/logger-csv.ts';
import type { Words } from '#words/en.ts';

type Asked = Extract<LoggerRead, { state: 'asked' }>;

export function columnText(
  column: { index: number; name: string; examples: readonly string[] },
  words: Words,
): string {
  return words.logger.option.column(column.name, column.index + 1, column.examples.slice(0, 2).join(', '));
}

export type QuestionView = {
  readonly key: LoggerQuestion['code'];
  readonly text: string;
  readonly options: readonly { value: string; label: string }[];
  /** What an answer adds to the choices. */
  readonly choose: (value: string) => LoggerChoices;
};

/** What the file leaves open, each with its answers. */
export function questionViews({ questions, columns }: Asked, words: Words): QuestionView[] {
  const { option } = words.logger;
  const column = (index: number | null) => {
    const found = columns.find((each) => each.index === index);
    return index === null ? option.none : found ? columnText(found, words) : option.column('', index + 1, '');
  };
  return questions.map((question) => questionView(question, column, words));
}

function questionView(
  question: LoggerQuestion,
  column: (index: number | null) => string,
  words: Words,
): QuestionView {
  const { question: ask, option } = words.logger;
  const { code } = question;
  switch (code) {
    case 'time-column':
    case 'temperature-column':
    case 'humidity-column':
      return {
        key: code,
        text: ask[code],
        options: question.options.map((index) => ({ value: String(index), label: column(index) })),
        choose: (value) =>
          code === 'time-column'
            ? { timeColumn: Number(value) }
            : code === 'temperature-column'
              ? { temperatureColumn: Number(value) }
              : { humidityColumn: value === 'null' ? null : Number(value) },
      };
    case 'date-order':
      return {
        key: code,
        text: ask[code](question.text),
        options: question.options.map(({ order, dayMs }) => ({
          value: order,
          label: words.dates.fullDay(dayMs, '+00:00'),
        })),
        choose: (value) => ({ order: question.options.find(({ order }) => order === value)?.order }),
      };
    case 'clock':
      return {
        key: code,
        text: ask[code](String(question.row)),
        options: question.options.map((value) => ({ value, label: option[value] })),
        choose: (value) => ({ clock: question.options.find((each) => each === value) }),
      };
    case 'repeated-hour':
      return {
        key: code,
        text: ask[code](String(question.row)),
        options: question.options.map((value) => ({ value, label: option[value] })),
        choose: (value) => ({ repeated: question.options.find((each) => each === value) }),
      };
    case 'unit':
      return {
        key: code,
        text: ask[code],
        options: question.options.map((value) => ({ value, label: option[value] })),
        choose: (value) => ({ unit: question.options.find((each) => each === value) }),
      };
  }
}
