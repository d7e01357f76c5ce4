import type { Metadata } from "next";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { TypeLetter } from "@/app/_ui/type-letter";
import { sensorFunctionView } from "@/lib/views/sensor-function";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { CorrectionSection } from "./correction-section";
import { FitSection } from "./fit-section";
import { readTableChoice } from "./read-table-choice";

type Props = {
  readonly params: Promise<{ readonly run: string; readonly tag: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | string[] | undefined>>>;
};

export const generateMetadata = async ({ params }: Props): Promise<Metadata> => {
  const { run, tag } = await params;
  return { title: `Deviation function of ${tag} in ${run}` };
};

export default async function SensorFunctionPage({ params, searchParams }: Props) {
  const { run, tag } = await params;
  const actor = await requirePermission("review.read");
  const choice = readTableChoice(await searchParams);
  const view = await load(sensorFunctionView(actor, run, tag, choice));
  const { result } = view;
  return (
    <Page
      title={`Deviation function of ${view.tag}`}
      crumbs={
        <Breadcrumb
          trail={[
            { label: "Review", href: "/review" },
            { label: view.number, href: `/review/${view.number}` },
          ]}
        />
      }
      lead={
        <>
          <TypeLetter letter={view.typeLetter} labelled /> serial {view.serial}, {view.customer}. A curve
          through the measured points, for temperatures between them.
        </>
      }
    >
      {result.kind === "none" ? <Notice kind="caution">{result.reason}</Notice> : null}
      {result.kind === "fitted" ? (
        <>
          <FitSection tag={view.tag} result={result} rule={view.rule} />
          <CorrectionSection view={view} result={result} />
        </>
      ) : null}
    </Page>
  );
}
