import Link from "next/link";
import type { ReactNode } from "react";
import { DataTable } from "@/app/_ui/data-table";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import {
  neededKinds,
  type SurveyKind,
  surveyKindLabels,
  surveyKinds,
} from "@/lib/domain/furnace/survey-kinds";
import type { CharacterisationRunView } from "@/lib/views/characterisation-run";

type Cell = CharacterisationRunView["table"][number]["cells"][number];

const isNeeded = (kind: SurveyKind): boolean => (neededKinds as readonly SurveyKind[]).includes(kind);

function SurveyCell({
  view,
  celsius,
  cell,
}: {
  readonly view: CharacterisationRunView;
  readonly celsius: number;
  readonly cell: Cell;
}): ReactNode {
  const { kind, survey, times } = cell;
  const href = `/furnaces/${view.furnace.id}/characterisations/${view.id}/survey?kind=${kind}&celsius=${celsius}`;
  const what = `${surveyKindLabels[kind].toLowerCase()} at ${celsius} °C`;
  return (
    <span className="row">
      {survey ? (
        <a href={`#survey-${survey.id}`}>
          <StateMark state="done" label={times > 1 ? `Measured, ${times} times` : "Measured"} />
        </a>
      ) : (
        <StateMark state="draft" label={isNeeded(kind) ? "To be measured" : "If it may matter"} />
      )}
      {view.mayMeasure ? (
        <Link href={href}>
          {survey ? "Again" : "Record"}
          <span className="unseen"> {what}</span>
        </Link>
      ) : null}
    </span>
  );
}

/** Temperatures down, surveys across: what is measured, and what is left. */
export function SurveyTable({ view }: { readonly view: CharacterisationRunView }) {
  return (
    <Section title="Surveys" wide>
      <DataTable
        caption="Surveys by temperature"
        captionUnseen
        columns={[
          { key: "celsius", header: "At", unit: "°C", align: "number" },
          ...surveyKinds.map((kind) => ({ key: kind, header: surveyKindLabels[kind] })),
        ]}
        rows={view.table.map(({ celsius, cells }) => ({
          key: String(celsius),
          cells: {
            celsius,
            ...Object.fromEntries(
              cells.map((cell) => [
                cell.kind,
                <SurveyCell key={cell.kind} view={view} celsius={celsius} cell={cell} />,
              ]),
            ),
          },
        }))}
      />
    </Section>
  );
}
