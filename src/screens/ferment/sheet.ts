import type { Place } from '#record/place.ts';
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

export const degreeSign = (place: Place): string => (place.temperature === 'C' ? '°C' : '°F');
