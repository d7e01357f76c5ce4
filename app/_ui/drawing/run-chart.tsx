import type { ReactNode } from "react";
import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type RunStripView, runStrip } from "@/lib/drawing/run-strip";

type Props = {
  readonly view: RunStripView;
  readonly caption?: ReactNode;
  readonly table?: "closed" | "open" | "none";
};

/** The temperature strip of a run with its setpoints and windows. */
export function RunChart({ view, caption, table }: Props) {
  return (
    <DrawingFigure
      drawing={runStrip(view, 960)}
      narrow={runStrip(view, 360)}
      caption={caption}
      table={table}
    />
  );
}
