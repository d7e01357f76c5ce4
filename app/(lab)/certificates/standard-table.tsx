import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import type { CertificateStandard } from "@/lib/domain/certificate/content";
import type { CalibrationStanding } from "@/lib/domain/trace/trace-certificate";

export type StandardLine = CertificateStandard & {
  readonly roleLabel: string;
  readonly routeLabel: string;
  readonly standing: CalibrationStanding;
};

const standings = {
  "in-date": { state: "in-date", label: "In date on the day" },
  "not-in-date": { state: "out-of-date", label: "Not in date on the day" },
  "no-certificate": { state: "exception", label: "No certificate" },
  "not-dated": { state: "due", label: "No due date" },
} as const satisfies Readonly<Record<CalibrationStanding, { state: string; label: string }>>;

/** Standards and instruments with the certificates they stand on. */
export function StandardTable({ standards }: { readonly standards: readonly StandardLine[] }) {
  return (
    <DataTable
      caption="Standards and instruments, with their certificates and due dates"
      captionUnseen
      columns={[
        { key: "tag", header: "Standard" },
        { key: "what", header: "What it is" },
        { key: "certificate", header: "Certificate" },
        { key: "route", header: "Route" },
        { key: "performed", header: "Calibrated" },
        { key: "due", header: "Due" },
        { key: "standing", header: "On the days of the run" },
      ]}
      rows={standards.map((standard) => ({
        key: standard.tag,
        tone: standard.standing === "not-in-date" ? "bad" : undefined,
        cells: {
          tag: (
            <>
              {standard.roleLabel} <Link href={`/standards/${standard.tag}`}>{standard.tag}</Link>
            </>
          ),
          what: `${standard.description}, serial ${standard.serial}`,
          certificate: standard.calibrationCertificate
            ? `${standard.calibrationCertificate}, ${standard.issuer}${standard.accreditation ? ` (${standard.accreditation})` : ""}`
            : "none",
          route: standard.routeLabel || "not recorded",
          performed: standard.performedOn ? (
            <Timestamp at={`${standard.performedOn}T00:00:00Z`} precision="day" />
          ) : (
            "none"
          ),
          due: standard.dueOn ? <Timestamp at={`${standard.dueOn}T00:00:00Z`} precision="day" /> : "none",
          standing: <StateMark {...standings[standard.standing]} />,
        },
      }))}
    />
  );
}
