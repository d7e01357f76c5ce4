import type { ReactNode } from "react";
import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type CheckPlotView, checkPlot } from "@/lib/drawing/check-plot";

type Props = { readonly view: CheckPlotView; readonly caption?: ReactNode };

/** Intermediate checks against the limits of those before, with their table. */
export function CheckChart({ view, caption }: Props) {
  return <DrawingFigure drawing={checkPlot(view, 640)} narrow={checkPlot(view, 360)} caption={caption} />;
}
