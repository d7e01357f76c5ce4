import type { ReactNode } from "react";
import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type ChannelPlotView, channelPlot } from "@/lib/drawing/channel-plot";

type Props = {
  readonly view: ChannelPlotView;
  readonly caption?: ReactNode;
  readonly table?: "closed" | "open" | "none";
};

/** One channel as it was read. */
export function ChannelChart({ view, caption, table }: Props) {
  return (
    <DrawingFigure
      drawing={channelPlot(view, 960)}
      narrow={channelPlot(view, 360)}
      caption={caption}
      table={table}
    />
  );
}
