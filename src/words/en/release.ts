import { type Said, said, strong } from '#words/said.ts';

const steps = { cleaned: 'cleaned', ground: 'ground', mixed: 'mixed', stuffed: 'stuffed' };

type Gap =
  | {
      code:
        | 'no-initials'
        | 'late'
        | 'meat-without-lot'
        | 'ph-without-meter'
        | 'meter-not-checked'
        | 'pieces-not-weighed'
        | 'unreadable'
        | 'rival-corrections'
        | 'clock-in-doubt';
      count: number;
    }
  | { code: 'line-not-weighed' | 'line-without-lot'; lines: readonly string[] }
  | { code: 'step-not-written'; steps: readonly (keyof typeof steps)[] }
  | { code: 'no-ph-of-mix' | 'no-ph' | 'no-room-temperature' | 'deviation-without-action' };

export const release = {
  title: 'Decide',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  sentence: {
    open: (open: number, gaps: number): Said =>
      said(
        strong(open === 1 ? 'One rule is not met or not known' : `${open} rules are not met or not known`),
        gaps === 0
          ? '.'
          : gaps === 1
            ? ', and one thing is missing on the record.'
            : `, and ${gaps} things are missing on the record.`,
      ),
    clear: (gaps: number): Said =>
      gaps === 0
        ? said('Every rule that was asked is within its limit, and nothing is missing on the record.')
        : said(
            'Every rule that was asked is within its limit. ',
            strong(gaps === 1 ? 'One thing is missing' : `${gaps} things are missing`),
            ' on the record.',
          ),
    decided: (decision: string, at: string): Said =>
      said(strong(decision), ` ${at}. A new decision stands beside the old one.`),
  },
  rules: 'The rules',
  gaps: 'Missing on the record',
  noGaps: 'Nothing.',
  gap: (gap: Gap): string => {
    switch (gap.code) {
      case 'no-initials':
        return gap.count === 1 ? 'One entry has no initials.' : `${gap.count} entries have no initials.`;
      case 'late':
        return gap.count === 1
          ? 'One entry was written later than it was true.'
          : `${gap.count} entries were written later than they were true.`;
      case 'clock-in-doubt':
        return gap.count === 1
          ? 'One entry stands at a time that is in doubt: see Kit, Backup, clock of the phone.'
          : `${gap.count} entries stand at times that are in doubt: see Kit, Backup, clock of the phone.`;
      case 'line-not-weighed':
        return `Not weighed out: ${gap.lines.join(', ')}.`;
      case 'line-without-lot':
        return `Weighed without a lot: ${gap.lines.join(', ')}.`;
      case 'meat-without-lot':
        return gap.count === 1
          ? 'One weighing of meat has no lot.'
          : `${gap.count} weighings of meat have no lot.`;
      case 'step-not-written':
        return `Not written down: ${gap.steps.map((step) => steps[step]).join(', ')}.`;
      case 'no-ph-of-mix':
        return 'No pH of the fresh mix.';
      case 'no-ph':
        return 'No pH of the product.';
      case 'no-room-temperature':
        return 'No temperature of the room.';
      case 'ph-without-meter':
        return gap.count === 1
          ? 'One pH does not say which meter.'
          : `${gap.count} pH readings do not say which meter.`;
      case 'meter-not-checked':
        return gap.count === 1
          ? 'On one day a pH meter was read and not checked in buffers.'
          : `On ${gap.count} days a pH meter was read and not checked in buffers.`;
      case 'pieces-not-weighed':
        return gap.count === 1
          ? 'One piece was not weighed since it was stuffed.'
          : `${gap.count} pieces were not weighed since they were stuffed.`;
      case 'deviation-without-action':
        return 'A rule is broken and no action is written down.';
      case 'unreadable':
        return gap.count === 1
          ? 'One entry cannot be read by this version.'
          : `${gap.count} entries cannot be read by this version.`;
      case 'rival-corrections':
        return 'Two corrections of one entry stand side by side.';
    }
  },
  decision: 'The decision',
  decisions: { release: 'Release', hold: 'Hold', reject: 'Reject' },
  past: { release: 'Released', hold: 'Put on hold', reject: 'Rejected' },
  note: 'Why, and by which test',
  noteNeeded: 'With a rule open or a gap, say why.',
  save: 'Write the decision down',
  caution:
    'A decision is yours, and your authority may see it otherwise. The app keeps what was known today: the verdicts, the rule set, the version. It does not make food safe.',
};
