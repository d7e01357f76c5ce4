import { DataTable } from "@/app/_ui/data-table";
import { parentKindLabels, parentRouteLabels } from "@/lib/domain/calibration/labels";
import type { ParentKind, ParentRoute } from "@/lib/domain/calibration/parent";
import type { CalibrationView } from "@/lib/views/calibration";

const columns = [
  { key: "line", header: "Line", align: "number" as const },
  { key: "what", header: "What it is" },
  { key: "certificate", header: "Certificate" },
  { key: "route", header: "Route" },
  { key: "dates", header: "Performed, valid until" },
  { key: "u", header: "U" },
  { key: "below", header: "Stands behind" },
];

/** What the certificate names behind itself. */
export function ParentsTable({ parents }: Pick<CalibrationView, "parents">) {
  if (parents.length === 0)
    return <p className="quiet">The certificate names nothing behind it: the chain ends at its route.</p>;
  return (
    <DataTable
      caption="What it stands on"
      captionUnseen
      columns={columns}
      rowHeader="what"
      rows={parents.map((parent) => ({
        key: parent.id,
        cells: {
          line: String(parent.position),
          what: `${parentKindLabels[parent.kind as ParentKind]}: ${[parent.title, parent.identity].filter(Boolean).join(", ")}`,
          certificate: [parent.certificate, parent.issuer].filter(Boolean).join(", "),
          route: parentRouteLabels[parent.route as ParentRoute],
          dates: [parent.performedOn, parent.validUntil].filter(Boolean).join(", "),
          u:
            parent.expanded === null
              ? ""
              : `${parent.expanded} ${parent.unit}${parent.coverageFactor === null ? "" : `, k = ${parent.coverageFactor}`}`,
          below: parent.below === null ? "the certificate" : `line ${parent.below}`,
        },
      }))}
    />
  );
}
