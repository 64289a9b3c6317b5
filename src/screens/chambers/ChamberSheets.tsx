import type { EntryOf } from '#record/entry.ts';
import type { Meter, Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Fact } from '#store/use-append.ts';
import type { SavedState } from '#ui/SavedMark.tsx';
import { StrikeSheet } from '#ui/StrikeSheet.tsx';
import type { Words } from '#words/en.ts';
import { AirSheet } from './AirSheet.tsx';
import { airText } from './air.ts';
import { ChamberSheet } from './ChamberSheet.tsx';
import type { ReadingRow } from './chamber-view.ts';

/** A reading that is open is one that may be struck. */
export type OpenSheet = 'read' | 'set' | 'change' | ReadingRow;

/** The sheet that is open over a chamber, and the fact that it makes. */
export function ChamberSheets({
  open,
  subject,
  added,
  last,
  meters,
  place,
  words,
  nowMs,
  saved,
  onFact,
  onClose,
}: {
  open: OpenSheet;
  subject: SubjectId;
  added: EntryOf<'chamber-added'>;
  last: EntryOf<'air-read'> | null;
  meters: readonly Meter[];
  place: Place;
  words: Words;
  nowMs: number;
  saved: { state: SavedState; text: string } | null;
  onFact: (fact: Fact) => void;
  onClose: () => void;
}) {
  const shared = { words, saved, onClose };
  if (open === 'change') {
    const strikes = { id: added.id, reason: words.chambers.correctReason };
    return (
      <ChamberSheet
        {...shared}
        chamber={added.body}
        onSave={(body) => onFact({ kind: 'chamber-added', subject, body, strikes })}
      />
    );
  }
  if (typeof open === 'object')
    return (
      <StrikeSheet
        what={`${open.title}, ${open.note}`}
        words={words.chambers.one}
        closeLabel={words.app.close}
        saved={shared.saved}
        onClose={shared.onClose}
        onStrike={(reason) =>
          onFact({ kind: 'struck', subject, body: {}, strikes: { id: open.entry.id, reason } })
        }
      />
    );
  const before = last && {
    airC: last.body.airC,
    atMs: last.atMs,
    text: words.chambers.one.lastWas(airText(last.body, place), words.dates.ago(last.atMs, nowMs)),
  };
  return (
    <AirSheet
      {...shared}
      what={open}
      before={before}
      meters={meters.filter(({ what }) => what !== 'ph-meter')}
      place={place}
      nowMs={nowMs}
      onSave={(body, atMs) => {
        const when = atMs === null ? {} : { atMs };
        if (open === 'read') return onFact({ kind: 'air-read', subject, body, ...when });
        const { airC, rhPct, typed } = body;
        const set = { airC, ...(rhPct === undefined ? {} : { rhPct }), ...(typed ? { typed } : {}) };
        return onFact({ kind: 'air-set', subject, body: set, ...when });
      }}
    />
  );
}
