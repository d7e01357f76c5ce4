import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Hash } from "@/app/_ui/hash";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import type { RunReadingsView } from "@/lib/views/run/run-readings";

export function BlockTable({ blocks }: Pick<RunReadingsView, "blocks">) {
  return (
    <DataTable
      caption="Blocks of readings as they came in"
      captionUnseen
      columns={[
        { key: "block", header: "Block" },
        { key: "source", header: "From" },
        { key: "readings", header: "Readings", align: "number" },
        { key: "channels", header: "Channels" },
        { key: "by", header: "By" },
        { key: "at", header: "Received" },
        { key: "root", header: "Hash of the block" },
      ]}
      rows={blocks.map((block) => ({
        key: String(block.sequence),
        tone: block.source === "typed" ? "watch" : undefined,
        cells: {
          block: block.sequence,
          source:
            block.source === "typed" ? (
              <StateMark state="typed" label="Typed by hand, twice" tone="watch" />
            ) : (
              (block.fileName ?? "a file without a name")
            ),
          readings: block.readings,
          channels: block.channels.join(", "),
          by: block.receivedBy,
          at: <Timestamp at={block.receivedAt} />,
          root: <Hash value={block.root} label="Hash of the block" />,
        },
      }))}
      empty={
        <EmptyState title="No readings yet">
          Upload the scanner&apos;s file here, or type the readings of a paper record. What came in is never
          changed.
        </EmptyState>
      }
    />
  );
}
