import type { Batch } from '#record/batch.ts';
import type { Check } from '#record/instruments.ts';
import { stallFacts } from '#record/stall-figures.ts';
import type { Kit } from '#store/live.ts';
import type { Fact } from '#store/use-append.ts';
import { ActionSheet } from './ActionSheet.tsx';
import { EndSheet } from './EndSheet.tsx';
import type { FermentView } from './ferment-view.ts';
import { HangSheet } from './HangSheet.tsx';
import { PhSheet } from './PhSheet.tsx';
import { ProgrammeSheet } from './ProgrammeSheet.tsx';
import { RoomSheet } from './RoomSheet.tsx';
import { SmokeSheet } from './SmokeSheet.tsx';
import { StallSheet } from './StallSheet.tsx';
import type { SheetProps } from './sheet.ts';

/** Named by what they write down. */
export type OpenSheet =
  | 'ferment-set'
  | 'ph-read'
  | 'room-read'
  | 'smoked'
  | 'ferment-ended'
  | 'hung'
  | 'action-taken'
  | 'stall';

/** The one sheet that is open. */
export function FermentSheets({
  open,
  batch,
  kit,
  checks,
  stage,
  onSave,
  ...common
}: Omit<SheetProps<never>, 'onSave'> & {
  open: OpenSheet;
  batch: Batch;
  kit: Kit;
  checks: readonly Check[];
  stage: FermentView['stage'];
  onSave: (fact: Pick<Fact, 'kind' | 'body'>, atMs: number | null) => void;
}) {
  return (
    <>
      {open === 'ph-read' && (
        <PhSheet
          {...common}
          meters={kit.meters.filter(({ what }) => what === 'ph-meter')}
          batch={batch}
          checks={checks}
          onSave={(body, atMs) => onSave({ kind: 'ph-read', body }, atMs)}
        />
      )}
      {open === 'room-read' && (
        <RoomSheet
          {...common}
          thermometers={kit.meters.filter(({ what }) => what !== 'ph-meter')}
          last={batch.room.at(-1)?.body}
          onSave={(body, atMs) => onSave({ kind: 'room-read', body }, atMs)}
        />
      )}
      {open === 'ferment-set' && (
        <ProgrammeSheet
          {...common}
          set={batch.fermentSet?.body ?? null}
          onSave={(body, atMs) => onSave({ kind: 'ferment-set', body }, atMs)}
        />
      )}
      {open === 'smoked' && (
        <SmokeSheet {...common} onSave={(body, atMs) => onSave({ kind: 'smoked', body }, atMs)} />
      )}
      {open === 'ferment-ended' && (
        <EndSheet
          {...common}
          stopped={stage === 'stopped'}
          onSave={(body, atMs) => onSave({ kind: 'ferment-ended', body }, atMs)}
        />
      )}
      {open === 'hung' && (
        <HangSheet
          {...common}
          chambers={kit.chambers}
          onSave={(body, atMs) => onSave({ kind: 'hung', body }, atMs)}
        />
      )}
      {open === 'action-taken' && (
        <ActionSheet
          {...common}
          ruleSet={batch.opened.body.ruleSet}
          onSave={(body, atMs) => onSave({ kind: 'action-taken', body }, atMs)}
        />
      )}
      {open === 'stall' && (
        <StallSheet
          {...common}
          log={stallFacts(batch, kit.lots, common.nowMs)}
          onSave={(body, atMs) => onSave({ kind: 'action-taken', body }, atMs)}
        />
      )}
    </>
  );
}
