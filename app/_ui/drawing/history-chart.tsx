import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type HistoryPlotView, historyPlot } from "@/lib/drawing/history-plot";

/** The error at one setpoint over the years; its table stands on the page. */
export function HistoryChart({ view }: { readonly view: HistoryPlotView }) {
  return <DrawingFigure drawing={historyPlot(view, 640)} narrow={historyPlot(view, 360)} table="none" />;
}
