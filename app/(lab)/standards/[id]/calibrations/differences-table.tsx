import { DataTable } from "@/app/_ui/data-table";
import type { Difference } from "@/lib/domain/calibration/differences";

/** Where a person confirmed another value than the digital certificate says. */
export function DifferencesTable({ differences }: { readonly differences: readonly Difference[] }) {
  return (
    <DataTable
      caption="Where the record differs from the file"
      captionUnseen
      columns={[
        { key: "label", header: "Value" },
        { key: "said", header: "In the file" },
        { key: "confirmed", header: "Confirmed" },
        { key: "reason", header: "Why" },
        { key: "line", header: "Line", align: "number" },
      ]}
      rows={differences.map(({ field, label, said, confirmed, reason, line }) => ({
        key: field,
        tone: "watch",
        cells: { label, said, confirmed, reason, line: String(line) },
      }))}
    />
  );
}
