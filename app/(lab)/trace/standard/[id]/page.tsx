import type { Metadata } from "next";
import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { TraceChart } from "@/app/_ui/drawing/trace-chart";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { traceStandardView } from "@/lib/views/trace-standard";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { AsOfForm } from "../../as-of-form";
import { askedDay, askedNumber } from "../../asked";
import { BreakList } from "../../break-list";
import { ChainTable } from "../../chain-table";
import { LaterSection } from "../../later-section";
import { treeView } from "../../tree-view";
import { StandingResults } from "./standing-results";

type Props = {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export const metadata: Metadata = { title: "Traceability of a standard" };

export default async function TraceStandardPage({ params, searchParams }: Props) {
  const actor = await requirePermission("laboratory.read");
  const { on, calibration, page: number } = await searchParams;
  const asked = {
    on: askedDay(on, new Date()),
    calibrationId: typeof calibration === "string" ? calibration : null,
    page: askedNumber(number) ?? 1,
  };
  const page = await load(traceStandardView(actor, decodeURIComponent((await params).id), asked));
  const { equipment, tree, breaks } = page;
  return (
    <Page
      title={`Traceability of ${equipment.tag}`}
      crumbs={<Breadcrumb trail={[{ label: "Traceability", href: "/trace" }]} />}
      state={
        breaks.length === 0 ? (
          <StateMark state="verified" label="Reaches the SI" />
        ) : (
          <StateMark state="exception" label="With reservations" />
        )
      }
      lead={
        <>
          Serial {equipment.serial}, as of {page.on}.{" "}
          <Link href={`/standards/${equipment.id}`}>Its record</Link>.
        </>
      }
    >
      <BreakList breaks={breaks} />
      {tree ? (
        <>
          <Section
            title="What it stands on"
            note={`By the calibration in force on ${page.on}.`}
            actions={<AsOfForm on={page.on} />}
            wide
          >
            <TraceChart view={treeView(tree, `From ${equipment.tag} to the SI`)} table="none" />
          </Section>
          <Section title="The same as a table" wide>
            <ChainTable tree={tree} caption={`The chain of ${equipment.tag}, step by step`} />
          </Section>
        </>
      ) : null}
      <StandingResults page={page} />
      <LaterSection flags={page.later} on={page.on} />
    </Page>
  );
}
