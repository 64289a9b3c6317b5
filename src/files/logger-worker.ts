/** Reads a logger's table beside the page, so that a month of minutes never holds up a thumb. */
import { type LoggerChoices, type LoggerRead, readLogger } from './logger-csv.ts';

export type LoggerTask = {
  readonly bytes: Uint8Array;
  readonly zone: string;
  readonly choices: LoggerChoices;
};
export type LoggerTold =
  | { readonly doneFraction: number; readonly answer?: never }
  | { readonly answer: LoggerRead };

const tell = (told: LoggerTold): void => self.postMessage(told);

self.onmessage = async ({ data }: MessageEvent<LoggerTask>) => {
  tell({ answer: await readLogger({ ...data, onProgress: (doneFraction) => tell({ doneFraction }) }) });
};
