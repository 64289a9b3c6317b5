import { app } from './en/app.ts';
import { batches } from './en/batches.ts';
import { dates } from './en/dates.ts';
import { due } from './en/due.ts';
import { fields } from './en/fields.ts';
import { hazards } from './en/hazards.ts';
import { limits } from './en/limits.ts';
import { today } from './en/today.ts';
import { verdicts } from './en/verdicts.ts';
import { weighOut } from './en/weigh-out.ts';
import { workings } from './en/workings.ts';

/** Every sentence and label in English. Another language is one more such object of the same type. */
export const en = { app, batches, dates, due, fields, hazards, limits, today, verdicts, weighOut, workings };

export type Words = typeof en;
