import { ChartFrame, type ChartFrameProps } from './ChartFrame.tsx';

/** Loss over days: pieces thin, the measured middle solid, the forecast dashed in its window, the target a line. */
export function LossChart(props: ChartFrameProps) {
  return <ChartFrame {...props} tone="cured" rings={false} />;
}
