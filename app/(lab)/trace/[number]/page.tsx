import type { Metadata } from "next";
import Link from "next/link";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { TraceChart } from "@/app/_ui/drawing/trace-chart";
import { EndedNotice } from "@/app/_ui/ended-notice";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { type TracePage as TracePageData, tracePageView } from "@/lib/views/trace-page";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { AsOfForm } from "../as-of-form";
import { askedCelsius, askedDay, askedPart } from "../asked";
import { BreakList } from "../break-list";
import { ChainTable } from "../chain-table";
import { LaterSection } from "../later-section";
import { ResultChoice } from "../result-choice";
import { treeView } from "../tree-view";

type Props = {
  readonly params: Promise<{ readonly number: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export const generateMetadata = async ({ params }: Props): Promise<Metadata> => ({
  title: `Traceability of ${(await params).number}`,
});

export default async function TracePage({ params, searchParams }: Props) {
  const actor = await requirePermission("laboratory.read");
  const { at, of, on } = await searchParams;
  const asked = { celsius: askedCelsius(at), on: askedDay(on, new Date()), of: askedPart(of) };
  const page = await load(tracePageView(actor, (await params).number, asked));
  const { tree, breaks } = page;
  return (
    <Page
      title={`Traceability of ${page.number}`}
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
          {page.item.tag}, serial {page.item.serial}; run <Link href={`/runs/${page.run}`}>{page.run}</Link>,{" "}
          {page.performedFrom} to {page.performedTo}.{" "}
          <Link href={`/certificates/${page.number}`}>The certificate</Link>. {page.statement}
        </>
      }
    >
      <EndedNotice
        number={page.number}
        standing={page.standing}
        further={(successor) => (
          <>
            See <Link href={`/trace/${successor}`}>the chain of its results</Link>.
          </>
        )}
      />
      <ResultChoice page={page} />
      <BreakList breaks={breaks} />
      {tree ? (
        <>
          <Section title={`How we know ${tree.node.title}`} note={frozenNote(page)} wide>
            <TraceChart
              view={treeView(tree, `From ${tree.node.title} to the SI`)}
              caption="Every name opens its record. A square with dashes is a gap; a second ring is the step that brings the most uncertainty."
              table="none"
            />
          </Section>
          <Section title="The same as a table" wide>
            <ChainTable tree={tree} caption={`The chain of ${tree.node.title}, step by step`} />
          </Section>
        </>
      ) : (
        <p>This certificate has no measured result, so there is no chain to draw.</p>
      )}
      <LaterSection
        flags={page.later}
        on={page.on}
        asOf={
          <AsOfForm
            on={page.on}
            kept={{
              at: String(tree?.node.facts.celsius ?? ""),
              ...(asked.of === null ? {} : { of: asked.of }),
            }}
          />
        }
      />
    </Page>
  );
}

const frozenNote = ({ frozenAt, isFrozenEarlier, isFrozenLater }: TracePageData): string => {
  if (frozenAt === null) return "Not frozen yet: composed now from the records the certificate rests on.";
  const day = frozenAt.slice(0, 10);
  if (isFrozenEarlier) return `Frozen when these results were first signed off, ${day}.`;
  return isFrozenLater
    ? `Frozen on ${day}, after the certificate was signed off.`
    : `Frozen at sign-off, ${day}.`;
};
