import type { ReactNode } from "react";
import { DrawingFigure } from "@/app/_ui/drawing/drawing-figure";
import { type BudgetBarsView, budgetBars } from "@/lib/drawing/budget-bars";

type Props = {
  readonly view: BudgetBarsView;
  readonly caption?: ReactNode;
  readonly table?: "closed" | "open" | "none";
};

/** An uncertainty budget as bars, largest first. */
export function BudgetChart({ view, caption, table }: Props) {
  return (
    <DrawingFigure
      drawing={budgetBars(view, 680)}
      narrow={budgetBars(view, 350)}
      caption={caption}
      table={table}
    />
  );
}
