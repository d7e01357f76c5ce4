import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { LinkButton } from "@/app/_ui/link-button";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import type { CalibrationRecord } from "@/lib/domain/calibration/types";
import { CalibrationMark } from "./[id]/calibrations/calibration-mark";
import { uncertaintyOf } from "./calibration-record";

type Props = {
  readonly equipmentId: string;
  readonly calibrations: readonly CalibrationRecord[];
  readonly inForceId: string | null;
  /** Our own certificates of it that are not taken over yet. */
  readonly mayAdopt: boolean;
};

const columns = [
  { key: "certificate", header: "Certificate" },
  { key: "issuer", header: "Issued by" },
  { key: "performedOn", header: "Performed" },
  { key: "dueOn", header: "Due again" },
  { key: "finding", header: "Finding" },
  { key: "file", header: "File" },
  { key: "state", header: "Acceptance" },
];

/** Every certificate it ever had, with its acceptance; the one in force says so. */
export function CertificatesSection({ equipmentId, calibrations, inForceId, mayAdopt }: Props) {
  const here = `/standards/${equipmentId}/calibrations`;
  return (
    <Section
      title="Certificates"
      note="Newest first. None is ever changed; a newer one follows."
      actions={mayAdopt ? <LinkButton href={`${here}/own`}>Take over our own certificate</LinkButton> : null}
      wide
    >
      {calibrations.length === 0 ? (
        <p className="quiet">None recorded yet. A quality manager records them.</p>
      ) : (
        <DataTable
          caption="Certificates"
          captionUnseen
          columns={columns}
          rows={calibrations.map((one) => ({
            key: one.id,
            cells: {
              certificate: <Link href={`${here}/${one.id}`}>{one.certificate}</Link>,
              issuer: one.issuer,
              performedOn: one.performedOn,
              dueOn: one.dueOn,
              finding: uncertaintyOf(one),
              file: one.documentId ? (
                <a href={`/api/documents/${one.documentId}`} download>
                  File
                </a>
              ) : (
                ""
              ),
              state: (
                <>
                  <div>
                    <CalibrationMark acceptance={one.acceptance} />
                  </div>
                  {one.id === inForceId ? <StateMark state="in-date" label="In force" /> : null}
                </>
              ),
            },
          }))}
        />
      )}
    </Section>
  );
}
