import { temperatureGate } from '#core/ferment/temperature-gate.ts';
import type { Place } from '#record/place.ts';
import { readQuantity } from '#ui/quantity-input.ts';
import type { VerdictShape } from '#ui/VerdictMark.tsx';
import type { Words } from '#words/en.ts';
import { joined, temperature } from '#words/format.ts';

/** A light for meat as it comes in, common practice; null while no temperature is typed. */
export function receivedGate(
  text: string,
  { place, words }: { place: Place; words: Words },
): { verdict: VerdictShape; word: string } | null {
  const read = readQuantity({ text, unit: place.temperature, decimal: place.decimal, least: -60, most: 150 });
  if (!read.ok) return null;
  const say = words.bench.gate;
  const shown = (tempC: number) => joined(temperature(tempC, place));
  const { light, limit } = temperatureGate({ stage: 'received', tempC: read.value });
  if (light === 'go') return { verdict: 'within-limit', word: say.go(shown(read.value)) };
  return light === 'mind'
    ? { verdict: 'pending', word: say.mind(shown(read.value), shown(limit.value)) }
    : { verdict: 'deviation', word: say.stopReceived(shown(read.value), shown(limit.value)) };
}
