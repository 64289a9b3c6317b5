/** Problems of a field, said so that the maker knows what to type. `most` and `least` come with their unit. */
type FieldProblem =
  | 'empty'
  | 'letters'
  | 'two-decimals'
  | 'spaces'
  | 'no-digits'
  | 'too-long'
  | 'thousands'
  | 'negative'
  | 'too-small'
  | 'too-large';

export const fields = {
  problem: (problem: FieldProblem, { least, most }: { least: string; most: string }): string => {
    switch (problem) {
      case 'empty':
        return 'Type a number here.';
      case 'letters':
      case 'no-digits':
        return 'Only a number fits here; the unit stands beside the field.';
      case 'two-decimals':
        return 'There is more than one decimal sign. Type it with one.';
      case 'spaces':
        return 'There is a gap in this number. Type it without spaces.';
      case 'too-long':
        return 'This number has more digits than can be kept.';
      case 'thousands':
        return 'This could be read in two ways. Type it without a sign between thousands.';
      case 'negative':
        return 'This cannot be less than nothing.';
      case 'too-small':
        return `This is too little: at least ${least}.`;
      case 'too-large':
        return `This is too much: at most ${most}. Was a digit typed twice?`;
    }
  },
  when: { when: 'When', now: 'Now', earlier: 'Earlier', time: 'Day and time' },
  whenProblem: { empty: 'Choose the day and time.', ahead: 'This lies ahead. Choose when it was.' },
  needed: 'Fill this in.',
  choose: 'Choose one.',
  tooLongText: (most: number) => `This is longer than ${most} signs.`,
  keyboard: {
    pad: 'Number keys',
    decimal: 'decimal sign',
    back: 'delete the last digit',
    sign: 'change the sign',
  },
};
