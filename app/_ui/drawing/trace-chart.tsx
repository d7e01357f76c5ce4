import type { ReactNode } from "react";
import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type TraceTreeView, traceTree } from "@/lib/drawing/trace-tree";

type Props = {
  readonly view: TraceTreeView;
  readonly caption?: ReactNode;
  readonly table?: "closed" | "open" | "none";
};

/** The traceability chain as a tree that ends in the SI. */
export function TraceChart({ view, caption, table }: Props) {
  return (
    <DrawingFigure
      drawing={traceTree(view, 1040)}
      narrow={traceTree(view, 360)}
      caption={caption}
      table={table}
    />
  );
}
