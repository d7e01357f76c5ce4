import Link from "next/link";
import { CertificateName } from "@/app/_ui/certificate-name";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { Quantity } from "@/app/_ui/quantity";
import { Section } from "@/app/_ui/section";
import { Tabs } from "@/app/_ui/tabs";
import { resultsOnPage, type TraceStandardPage } from "@/lib/views/trace-standard";

const columns = [
  { key: "result", header: "Result" },
  { key: "value", header: "Error ± U", unit: "°C", align: "number" as const },
  { key: "certificate", header: "Certificate" },
  { key: "run", header: "Run" },
  { key: "day", header: "Measured" },
];

const addressOf = (
  { equipment, on, calibrations }: TraceStandardPage,
  page: number,
  calibrationId?: string,
) => {
  const chosen = calibrationId ?? calibrations.find(({ isChosen }) => isChosen)?.id;
  const asked = new URLSearchParams({ on, ...(chosen ? { calibration: chosen } : {}), page: String(page) });
  return `/trace/standard/${equipment.id}?${asked}#results`;
};

/** From the other end: every issued result that stands on this, directly or through a standard calibrated with it. */
export function StandingResults({ page }: { readonly page: TraceStandardPage }) {
  const last = Math.max(1, Math.ceil(page.count / resultsOnPage));
  const all = `/trace/standard/${page.equipment.id}?on=${page.on}#results`;
  const chosen = page.calibrations.find(({ isChosen }) => isChosen);
  return (
    <Section
      id="results"
      title="Results that stand on it"
      note={`${page.count} issued result${page.count === 1 ? "" : "s"}, directly or through others${chosen ? `, by ${chosen.certificate}` : ""}.`}
      wide
    >
      {page.calibrations.length > 1 ? (
        <Tabs
          label="By which calibration"
          current={chosen ? addressOf(page, 1, chosen.id) : all}
          tabs={[
            { label: "By any calibration", href: all },
            ...page.calibrations.map(({ id, certificate }) => ({
              label: certificate,
              href: addressOf(page, 1, id),
            })),
          ]}
        />
      ) : null}
      <DataTable
        caption="Results that stand on it"
        captionUnseen
        columns={columns}
        rows={page.results.map((result) => ({
          key: result.id,
          cells: {
            result: <Link href={`/trace/${result.certificate}?at=${result.celsius}`}>{result.title}</Link>,
            value: <Quantity value={result.errorCelsius} uncertainty={result.expandedCelsius} />,
            certificate: <CertificateName number={result.certificate} standing={result.standing} />,
            run: <Link href={`/runs/${result.run}`}>{result.run}</Link>,
            day: result.performedTo,
          },
        }))}
        empty={
          <EmptyState title="No issued result stands on it">
            Results appear here once a certificate is signed off.
          </EmptyState>
        }
      />
      {last > 1 ? (
        <nav className="row" aria-label="Pages of results">
          {page.page > 1 ? <Link href={addressOf(page, page.page - 1)}>Newer</Link> : null}
          <span>
            Page {page.page} of {last}
          </span>
          {page.page < last ? <Link href={addressOf(page, page.page + 1)}>Older</Link> : null}
        </nav>
      ) : null}
    </Section>
  );
}
