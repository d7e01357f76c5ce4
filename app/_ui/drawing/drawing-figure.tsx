import type { ReactNode } from "react";
import { DataTable } from "@/app/_ui/data-table";
import { Disclosure } from "@/app/_ui/disclosure";
import { DrawingShape } from "@/app/_ui/drawing/drawing-shape";
import type { Drawing, DrawingTable } from "@/lib/drawing/scene";

type Props = {
  readonly drawing: Drawing;
  /** The same for 390 px, so that letters stay readable there. */
  readonly narrow?: Drawing;
  readonly caption?: ReactNode;
  /** closed: behind a line; open: shown; none: the page has the table elsewhere. */
  readonly table?: "closed" | "open" | "none";
};

function Svg({ drawing, className }: { readonly drawing: Drawing; readonly className: string }) {
  const linked = drawing.shapes.some((shape) => shape.kind === "link");
  return (
    // A picture with links inside is a group: role img would hide them from a screen reader.
    <svg
      className={className}
      viewBox={`0 0 ${drawing.width} ${drawing.height}`}
      style={{ maxWidth: drawing.width * 1.25 }}
      role={linked ? "group" : "img"}
      aria-label={`${drawing.title}. ${drawing.description}`}
    >
      {drawing.shapes.map((shape, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is made once and never reordered
        <DrawingShape key={`${shape.kind}${index}`} shape={shape} />
      ))}
    </svg>
  );
}

export function DrawingTableView({ table }: { readonly table: DrawingTable }) {
  return (
    <DataTable
      caption={table.caption}
      columns={table.columns.map((column, index) => ({ ...column, key: String(index) }))}
      rows={table.rows.map((cells, row) => ({
        key: String(row),
        cells: Object.fromEntries(cells.map((cell, index) => [String(index), cell])),
      }))}
    />
  );
}

/** A drawing with its text alternative and its table. */
export function DrawingFigure({ drawing, narrow, caption, table = "closed" }: Props) {
  return (
    <figure className="figure">
      {narrow ? <Svg drawing={narrow} className="figure-narrow" /> : null}
      <Svg drawing={drawing} className="figure-full" />
      {caption ? <figcaption>{caption}</figcaption> : null}
      {table === "open" ? <DrawingTableView table={drawing.table} /> : null}
      {table === "closed" ? (
        <Disclosure summary="As a table">
          <DrawingTableView table={drawing.table} />
        </Disclosure>
      ) : null}
    </figure>
  );
}
