import { DataTable } from "@/app/_ui/data-table";
import type { ProcedureView } from "@/lib/views/procedure";

type Lines = NonNullable<ProcedureView["current"]>["lines"];

/** The figures in words: line, figure, where it comes from. */
export function LineList({ lines, caption }: { readonly lines: Lines; readonly caption: string }) {
  return (
    <DataTable
      caption={caption}
      captionUnseen
      columns={[
        { key: "label", header: "Line" },
        { key: "figure", header: "Figure" },
        { key: "source", header: "Source or reason" },
      ]}
      rows={lines.map(({ place, label, figure, source }) => ({
        key: place,
        cells: { label, figure, source },
      }))}
    />
  );
}
