import type { Meter, Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import type { SavedState } from '#ui/SavedMark.tsx';
import type { Words } from '#words/en.ts';

/** What every sheet of the ferment is given. It closes when what it hands over is on disk. */
export type SheetProps<Body> = {
  place: Place;
  words: Words;
  nowMs: number;
  saved: { state: SavedState; text: string } | null;
  onSave: (body: Body, atMs: number | null) => void;
  onClose: () => void;
};

/** The instrument of the last time, while it still stands in the kit. */
export function taken(id: SubjectId | undefined, meters: readonly Meter[]): SubjectId | null {
  return meters.find((each) => each.id === id)?.id ?? null;
}

export const degreeSign = (place: Place): string => (place.temperature === 'C' ? '°C' : '°F');
