import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { Section } from "@/app/_ui/section";
import { equipmentKindLabels } from "@/lib/domain/equipment/labels";
import type { NewRunView } from "@/lib/views/run/new-run";

const columns = [
  { key: "tag", header: "Tag" },
  { key: "kind", header: "What it is" },
  { key: "reason", header: "Why it is not offered" },
];

/** Equipment that cannot be chosen today, each with the reason and what mends it. */
export function NotOffered({ equipment }: { readonly equipment: NewRunView["notOffered"] }) {
  if (equipment.length === 0) return null;
  return (
    <Section title="Not offered" note="Equipment that no run may stand on today." wide>
      <DataTable
        caption="Equipment that is not offered"
        captionUnseen
        columns={columns}
        rows={equipment.map(({ id, tag, kind, message }) => ({
          key: id,
          tone: "watch",
          cells: {
            tag: <Link href={`/standards/${id}`}>{tag}</Link>,
            kind: equipmentKindLabels[kind],
            reason: message,
          },
        }))}
      />
    </Section>
  );
}
