import type { Metadata } from "next";
import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DataTable } from "@/app/_ui/data-table";
import { TraceChart } from "@/app/_ui/drawing/trace-chart";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Quantity } from "@/app/_ui/quantity";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { StandardTable } from "@/app/(lab)/certificates/standard-table";
import { tracePageView } from "@/lib/views/trace-page";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { treeView } from "../tree-view";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props): Promise<Metadata> => ({
  title: `Traceability of ${(await params).number}`,
});

const columns = [
  { key: "setpoint", header: "Result at" },
  { key: "value", header: "Error ± U", unit: "°C", align: "number" as const },
  { key: "references", header: "References" },
  { key: "voltmeter", header: "Voltmeter" },
  { key: "scanner", header: "Scanner" },
  { key: "junctions", header: "Junctions" },
];

export default async function TracePage({ params }: Props) {
  const actor = await requirePermission("laboratory.read");
  const page = await load(tracePageView(actor, (await params).number));
  const { trace } = page;
  return (
    <Page
      title={`Traceability of ${page.number}`}
      crumbs={<Breadcrumb trail={[{ label: "Traceability", href: "/trace" }]} />}
      state={
        trace.breaks.length === 0 ? (
          <StateMark state="verified" label="Reaches the SI" />
        ) : (
          <StateMark state="exception" label="With reservations" />
        )
      }
      lead={
        <>
          {page.item.tag}, serial {page.item.serial}; run {page.run}, {page.performedFrom} to{" "}
          {page.performedTo}. <Link href={`/certificates/${page.number}`}>The certificate</Link>.{" "}
          {page.statement}
        </>
      }
    >
      {trace.breaks.map((gap) => (
        <Notice key={`${gap.tag} ${gap.text}`} kind="caution">
          {gap.tag}: {gap.text}.
        </Notice>
      ))}
      <Section title="Chain" note="As it stood on the days of the run." wide>
        <TraceChart view={treeView(page)} table="none" />
      </Section>
      <Section title="Each result" wide>
        <DataTable
          caption="What each result stands on"
          captionUnseen
          columns={columns}
          rows={page.results.map((result) => ({
            key: result.setpoint,
            cells: {
              setpoint: result.setpoint,
              value: <Quantity value={result.errorCelsius} uncertainty={result.expandedCelsius} />,
              references: result.references.join(", "),
              voltmeter: result.voltmeter.join(", "),
              scanner: result.scanner.join(", "),
              junctions: result.junctions.join(", "),
            },
          }))}
        />
      </Section>
      <Section title="Certificates they stand on" wide>
        <StandardTable
          standards={trace.lines.map(({ standard, role, route, standing }) => ({
            ...standard,
            roleLabel: role,
            routeLabel: route,
            standing,
          }))}
        />
      </Section>
      <Section title="Since then" note="Does not change the chain as signed.">
        {page.later.length === 0 ? (
          <p>Nothing was recorded about these standards that would ask for another look.</p>
        ) : (
          <ul className="plain-list">
            {page.later.map((flag) => (
              <li key={`${flag.tag} ${flag.text}`}>
                <Link href={`/standards/${flag.tag}`}>{flag.tag}</Link> {flag.text}.
              </li>
            ))}
          </ul>
        )}
      </Section>
    </Page>
  );
}
