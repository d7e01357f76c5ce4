import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type FurnaceQueueView, furnaceQueue } from "@/lib/drawing/furnace-queue";

type Props = { readonly view: FurnaceQueueView; readonly table?: "closed" | "open" | "none" };

/** Furnaces and the hours taken of them, with the same as a table. */
export function FurnaceQueue({ view, table }: Props) {
  return <DrawingFigure drawing={furnaceQueue(view, 760)} narrow={furnaceQueue(view, 350)} table={table} />;
}
