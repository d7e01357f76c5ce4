import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type CapabilityPlotView, capabilityPlot } from "@/lib/drawing/capability-plot";

/** A type's capability over temperature, with its table below. */
export function CapabilityChart({ view }: { readonly view: CapabilityPlotView }) {
  return (
    <DrawingFigure drawing={capabilityPlot(view, 640)} narrow={capabilityPlot(view, 360)} table="open" />
  );
}
