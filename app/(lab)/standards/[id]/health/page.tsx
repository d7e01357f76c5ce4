import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { DataTable } from "@/app/_ui/data-table";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import { isoDay } from "@/lib/domain/calibration/due";
import { referenceHealthView } from "@/lib/views/reference-health";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { DriftAdviceList } from "../../drift-advice-list";
import { DriftSection } from "../../drift-section";
import { WearTable } from "../../wear-table";

export const metadata = { title: "Health of a reference" };

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly celsius?: string | string[] }>;
};

const columns = [
  { key: "run", header: "Run" },
  { key: "on", header: "Day" },
  { key: "furnace", header: "In the furnace", unit: "h", align: "number" as const },
  { key: "above", header: "Above 1000 °C", unit: "h", align: "number" as const },
  { key: "highest", header: "Highest", unit: "°C", align: "number" as const },
  { key: "immersion", header: "Immersion", unit: "mm", align: "number" as const },
];

export default async function ReferenceHealthPage({ params, searchParams }: Props) {
  const actor = await requireStaff();
  const view = await load(referenceHealthView(actor, (await params).id, isoDay(new Date())));
  const { equipment, health, uses, drift, advice, allowedCelsius } = view;
  const trail = [
    { label: "Standards", href: "/standards" },
    { label: equipment.tag, href: `/standards/${equipment.id}` },
  ];
  return (
    <Page
      title={`Health of ${equipment.tag}`}
      crumbs={<Breadcrumb trail={trail} />}
      lead="What it has been through, counted from the readings of its runs, and how it has changed from calibration to calibration."
    >
      <Section title="Wear">
        <WearTable health={health} />
      </Section>
      <Section
        title="Drift"
        note="E − E(table) against the first calibration, at temperatures all of them cover."
        wide
      >
        <DriftSection
          tag={equipment.tag}
          drift={drift}
          asked={(await searchParams).celsius}
          here={`/standards/${equipment.id}/health`}
          allowedCelsius={allowedCelsius}
        />
      </Section>
      {advice ? (
        <Section
          title="What that suggests"
          note="Advice from the certificates alone. People set the interval."
        >
          <DriftAdviceList advice={advice} allowedCelsius={allowedCelsius} />
        </Section>
      ) : null}
      <Section title="Runs" wide>
        <DataTable
          caption="What each run cost it"
          captionUnseen
          columns={columns}
          empty={<p className="quiet">No run with it was handed over yet.</p>}
          rows={uses.map((use) => ({
            key: use.run,
            cells: {
              run: <Link href={`/runs/${use.run}`}>{use.run}</Link>,
              on: <Timestamp at={use.on} precision="day" />,
              furnace: use.hoursInFurnace.toFixed(2),
              above: use.hoursAbove1000.toFixed(2),
              highest: use.highestCelsius.toFixed(1),
              immersion: use.immersionMillimetre ?? "",
            },
          }))}
        />
      </Section>
    </Page>
  );
}
