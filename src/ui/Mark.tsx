/** The small signs beside words. Told apart by shape; the word beside them says the same. */
export type MarkShape = 'caution' | 'offline' | 'error' | 'saved' | 'saving' | 'forward';

const PATHS: Record<MarkShape, string> = {
  caution: 'M10 2 18.5 17.5h-17ZM10 7.5v5M10 14v1.8',
  offline: 'M2 8a11.5 11.5 0 0 1 16 0M5 11.5a7 7 0 0 1 10 0M10 15.5v1M3 18 17 3',
  error: 'M6.5 2h7L18 6.5v7L13.5 18h-7L2 13.5v-7ZM6.8 6.8l6.4 6.4M13.2 6.8l-6.4 6.4',
  saved: 'M3 10.5 8 15.5 17.5 4.5',
  saving: 'M10 2.5a7.5 7.5 0 1 0 7.5 7.5',
  forward: 'M7 3.5 13.5 10 7 16.5',
};

export function Mark({ shape }: { shape: MarkShape }) {
  return (
    <svg viewBox="0 0 20 20" width="1.25em" height="1.25em" aria-hidden="true">
      <path d={PATHS[shape]} fill="none" stroke="currentColor" strokeWidth="2.2" strokeLinejoin="round" />
    </svg>
  );
}
