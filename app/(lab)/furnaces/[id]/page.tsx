import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { EmptyState } from "@/app/_ui/empty-state";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { isoDay } from "@/lib/domain/calibration/due";
import { furnaceView } from "@/lib/views/furnace";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ReportLine } from "../../quality/report-line";
import { ConfigurationSection } from "../configuration-section";
import { FurnaceRecord } from "../furnace-record";
import { HotWorkNotice } from "../hot-work-notice";

export const metadata = { title: "Furnace" };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function FurnacePage({ params }: Props) {
  const actor = await requireStaff();
  const furnace = await load(furnaceView(actor, (await params).id, isoDay(new Date())));
  const here = `/furnaces/${furnace.id}`;
  const configure = furnace.mayChange ? (
    <LinkButton href={`${here}/configurations/new`} kind="primary">
      Record a configuration
    </LinkButton>
  ) : null;
  return (
    <Page
      title={`${furnace.tag}, ${furnace.name}`}
      crumbs={<Breadcrumb trail={[{ label: "Furnaces", href: "/furnaces" }]} />}
      actions={
        <>
          {furnace.mayChange ? <LinkButton href={`${here}/edit`}>Change the record</LinkButton> : null}
          {furnace.configurations.length > 0 ? configure : null}
        </>
      }
    >
      <HotWorkNotice />
      <FurnaceRecord furnace={furnace} />
      {furnace.configurations.length === 0 ? (
        <EmptyState title="No configuration yet" action={configure}>
          A run is made in a configuration: a bare tube, or an equalising block with its bores.
        </EmptyState>
      ) : null}
      {furnace.configurations.map((configuration) => (
        <ConfigurationSection
          key={configuration.id}
          furnaceId={furnace.id}
          boreMillimetre={furnace.boreMillimetre}
          configuration={configuration}
          mayChange={furnace.mayChange}
        />
      ))}
      <ReportLine actor={actor} kind="equipment" name={furnace.tag} />
    </Page>
  );
}
