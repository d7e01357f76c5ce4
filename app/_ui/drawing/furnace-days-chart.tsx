import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type FurnaceDaysView, furnaceDays } from "@/lib/drawing/furnace-days";

/** The furnaces and the coming days, with the table beside. */
export function FurnaceDaysChart({ view }: { readonly view: FurnaceDaysView }) {
  return (
    <DrawingFigure
      drawing={furnaceDays(view, 1200)}
      narrow={furnaceDays(view, 360)}
      caption="Filled: a run or characterisation, hot or planned. Dashed outline: hours reserved, below what takes the same hours. The dashed upright line is now. Grey days are Saturdays and Sundays. Times in UTC."
    />
  );
}
