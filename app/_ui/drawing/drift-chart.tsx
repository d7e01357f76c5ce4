import type { ReactNode } from "react";
import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type DriftPlotView, driftPlot } from "@/lib/drawing/drift-plot";

type Props = { readonly view: DriftPlotView; readonly caption?: ReactNode };

/** The change of a reference from calibration to calibration, with its table. */
export function DriftChart({ view, caption }: Props) {
  return <DrawingFigure drawing={driftPlot(view, 640)} narrow={driftPlot(view, 360)} caption={caption} />;
}
