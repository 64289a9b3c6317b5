import { ChartFrame, type ChartFrameProps } from './ChartFrame.tsx';

/** A chamber's air over time: long series without rings. */
export function AirChart(props: ChartFrameProps) {
  return <ChartFrame {...props} tone="ink" rings={false} />;
}
