import type { ReactNode } from "react";
import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type FunctionPlotView, functionPlot } from "@/lib/drawing/function-plot";

type Props = { readonly view: FunctionPlotView; readonly caption?: ReactNode };

/** A fitted function with its band and its points; the table shows the residuals. */
export function FunctionChart({ view, caption }: Props) {
  return (
    <DrawingFigure
      drawing={functionPlot(view, 640)}
      narrow={functionPlot(view, 360)}
      caption={caption}
      table="open"
    />
  );
}
