import { absence } from './en/absence.ts';
import { afterFault } from './en/after-fault.ts';
import { batch } from './en/batch.ts';
import { bench } from './en/bench.ts';
import { calendar } from './en/calendar.ts';
import { chamberAhead } from './en/chamber-ahead.ts';
import { chambers } from './en/chambers.ts';
import { clock } from './en/clock.ts';
import { compare } from './en/compare.ts';
import { copyBackup } from './en/copy-backup.ts';
import { dryness } from './en/dryness.ts';
import { ferment } from './en/ferment.ts';
import { fermentAhead } from './en/ferment-ahead.ts';
import { fermentExamples } from './en/ferment-examples.ts';
import { fermentStall } from './en/ferment-stall.ts';
import { fields } from './en/fields.ts';
import { first } from './en/first.ts';
import { formulaEdit } from './en/formula-edit.ts';
import { formulaSheets } from './en/formula-sheets.ts';
import { formulas } from './en/formulas.ts';
import { freezing } from './en/freezing.ts';
import { guards } from './en/guards.ts';
import { hanging } from './en/hanging.ts';
import { hangingPace } from './en/hanging-pace.ts';
import { hazards } from './en/hazards.ts';
import { instruments } from './en/instruments.ts';
import { keeping } from './en/keeping.ts';
import { kit } from './en/kit.ts';
import { limits } from './en/limits.ts';
import { logger } from './en/logger.ts';
import { mould } from './en/mould.ts';
import { openBatch } from './en/open-batch.ts';
import { photos } from './en/photos.ts';
import { piece } from './en/piece.ts';
import { rail } from './en/rail.ts';
import { received } from './en/received.ts';
import { record } from './en/record.ts';
import { release } from './en/release.ts';
import { round } from './en/round.ts';
import { stuffing } from './en/stuffing.ts';
import { tags } from './en/tags.ts';
import { tasting } from './en/tasting.ts';
import { timers } from './en/timers.ts';
import { trace } from './en/trace.ts';
import { verdicts } from './en/verdicts.ts';
import { weighOut } from './en/weigh-out.ts';
import { whatIf } from './en/what-if.ts';
import { workings } from './en/workings.ts';

/** Every sentence and label in English. Another language is one more such object of the same type. */
export const en = {
  ...first,
  release,
  photos,
  piece,
  record,
  hanging,
  hangingPace,
  batch,
  round,
  ferment,
  fermentAhead,
  fermentExamples,
  fermentStall,
  bench,
  afterFault,
  chambers,
  kit,
  received,
  dryness,
  fields,
  formulaEdit,
  formulaSheets,
  formulas,
  freezing,
  guards,
  hazards,
  instruments,
  limits,
  logger,
  openBatch,
  stuffing,
  tags,
  absence,
  calendar,
  whatIf,
  chamberAhead,
  keeping,
  clock,
  timers,
  rail,
  mould,
  trace,
  verdicts,
  weighOut,
  compare,
  copyBackup,
  tasting,
  workings,
};

export type Words = typeof en;
