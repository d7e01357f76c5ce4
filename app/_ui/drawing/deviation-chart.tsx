import type { ReactNode } from "react";
import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type DeviationPlotView, deviationPlot } from "@/lib/drawing/deviation-plot";

type Props = {
  readonly view: DeviationPlotView;
  readonly caption?: ReactNode;
  readonly table?: "closed" | "open" | "none";
};

/** Errors or deviations with U, inside the tolerance. */
export function DeviationChart({ view, caption, table }: Props) {
  return (
    <DrawingFigure
      drawing={deviationPlot(view, 640)}
      narrow={deviationPlot(view, 360)}
      caption={caption}
      table={table}
    />
  );
}
