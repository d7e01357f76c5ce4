import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { loadImmersion } from "@/lib/drawing/load-immersion";
import { loadSection } from "@/lib/drawing/load-section";
import type { LoadView } from "@/lib/drawing/load-view";

type Props = { readonly view: LoadView; readonly table?: "closed" | "open" | "none" };

/** The furnace load: from the mouth of the tube and along it, side by side where there is room. */
export function FurnaceLoad({ view, table }: Props) {
  return (
    <div className="side-by-side">
      <DrawingFigure drawing={loadSection(view, 460)} narrow={loadSection(view, 350)} table="none" />
      <DrawingFigure drawing={loadImmersion(view, 480)} narrow={loadImmersion(view, 350)} table={table} />
    </div>
  );
}
