import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type CustodyLineView, custodyLine } from "@/lib/drawing/custody-line";

/** A sensor from hand to hand, with its table. */
export function CustodyChart({ view }: { readonly view: CustodyLineView }) {
  return <DrawingFigure drawing={custodyLine(view, 640)} narrow={custodyLine(view, 340)} />;
}
