import { app } from './app.ts';
import { backupFile } from './backup-file.ts';
import { batches } from './batches.ts';
import { dates } from './dates.ts';
import { due } from './due.ts';
import { start } from './start.ts';
import { today } from './today.ts';
import { why } from './why.ts';

/** What is said before any room but Today is entered: a first start waits for no more than this. */
export const first = { app, backupFile, batches, dates, due, start, today, why };

export type FirstWords = typeof first;
