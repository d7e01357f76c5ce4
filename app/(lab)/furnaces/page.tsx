import Link from "next/link";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { StateMark } from "@/app/_ui/state-mark";
import { isoDay } from "@/lib/domain/calibration/due";
import { may } from "@/lib/domain/staff/permissions";
import { furnacesView } from "@/lib/views/furnaces";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { CharacterisationMark } from "./characterisation-mark";
import { DecisionMark } from "./decision-mark";
import { HotWorkNotice } from "./hot-work-notice";

export const metadata = { title: "Furnaces" };

const columns = [
  { key: "furnace", header: "Furnace" },
  { key: "range", header: "Range", unit: "°C" },
  { key: "configurations", header: "Configurations, and whether their characterisation holds" },
];

export default async function FurnacesPage() {
  const actor = await requireStaff();
  const furnaces = await load(furnacesView(actor, isoDay(new Date())));
  const record = may(actor.roles, "furnace.record") ? (
    <LinkButton href="/furnaces/new" kind="primary">
      Record a furnace
    </LinkButton>
  ) : null;
  return (
    <Page
      title="Furnaces"
      lead="Where sensors and references stand together. What counts for a result is the configuration and how uniform it was found to be."
      actions={
        <>
          <LinkButton href="/furnaces/inhomogeneity">Inhomogeneity tests</LinkButton>
          {furnaces.length > 0 ? record : null}
        </>
      }
    >
      <HotWorkNotice />
      <DataTable
        caption="Furnaces"
        captionUnseen
        columns={columns}
        rows={furnaces.map((furnace) => ({
          key: furnace.id,
          cells: {
            furnace: (
              <Link href={`/furnaces/${furnace.id}`}>
                {furnace.tag}, {furnace.name}
              </Link>
            ),
            range: `${furnace.minimumCelsius} to ${furnace.maximumCelsius}`,
            configurations:
              furnace.configurations.length === 0 ? (
                <StateMark state="draft" label="None yet" />
              ) : (
                <ul className="list">
                  {furnace.configurations.map((one) => (
                    <li key={one.id} className="row">
                      {one.name} <CharacterisationMark due={one.due} />
                      {one.isWaiting ? <DecisionMark state="waiting" /> : null}
                    </li>
                  ))}
                </ul>
              ),
          },
        }))}
        empty={
          <EmptyState title="No furnace yet" action={record}>
            Record the furnace, then each configuration it is used in (a bare tube, an equalising block), then
            the characterisation of each: how far any place may differ from the references’ mean.
          </EmptyState>
        }
      />
    </Page>
  );
}
