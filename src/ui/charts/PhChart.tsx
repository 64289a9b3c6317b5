import { ChartFrame, type ChartFrameProps } from './ChartFrame.tsx';

/** pH over hours: a ring at each reading, since the line between them was drawn and not measured. */
export function PhChart(props: ChartFrameProps) {
  return <ChartFrame {...props} tone="ink" rings />;
}
