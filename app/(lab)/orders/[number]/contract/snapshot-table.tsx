import { DataTable } from "@/app/_ui/data-table";
import type { SnapshotDifference } from "@/lib/domain/order/order-snapshot";

const columns = [
  { key: "where", header: "Where" },
  { key: "before", header: "Before" },
  { key: "after", header: "Now" },
];

/** What a change changed, word for word. */
export function SnapshotTable({
  caption,
  differences,
}: {
  readonly caption: string;
  readonly differences: readonly SnapshotDifference[];
}) {
  return (
    <DataTable
      caption={caption}
      columns={columns}
      rows={differences.map(({ where, before, after }) => ({
        key: where,
        cells: {
          where,
          before: before || <span className="quiet">nothing</span>,
          after: after || <span className="quiet">nothing</span>,
        },
      }))}
    />
  );
}
