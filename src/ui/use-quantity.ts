import { useState } from 'react';
import type { DecimalSign } from './number-input.ts';
import { type Bounds, type QuantityUnit, type ReadQuantity, readQuantity } from './quantity-input.ts';

export type Quantity = {
  text: string;
  onText: (text: string) => void;
  read: ReadQuantity;
  empty: boolean;
};

/** One field's typed text and what it reads as. The text is kept whatever it reads as. */
export function useQuantity(
  given: Bounds & { unit: QuantityUnit; decimal: DecimalSign; initial?: string },
): Quantity {
  const [text, onText] = useState(given.initial ?? '');
  return { text, onText, read: readQuantity({ ...given, text }), empty: text.trim() === '' };
}
