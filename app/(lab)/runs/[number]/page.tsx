import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { runWindowsView } from "@/lib/views/run/run-windows";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { ReportLine } from "../../quality/report-line";
import { FarFigures } from "./far-figures";
import { RoomSection } from "./room/room-section";
import { RunPage } from "./run-page";
import { TemperatureStrip } from "./temperature-strip";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props) => ({ title: `Run ${(await params).number}` });

export default async function RunOverviewPage({ params }: Props) {
  const actor = await requireStaff();
  const view = await load(runWindowsView(actor, (await params).number));
  return (
    <RunPage head={view.head} at="">
      <FarFigures view={view} />
      {view.head.mayWork ? (
        <Notice kind="danger" title="Hot work">
          Tubes and sensors stay hot long after the set temperature falls. Draw a sensor out slowly, onto
          ceramic, and never across another person. This page does not command the furnace: a furnace that
          does not obey is switched off by its own contactor.
        </Notice>
      ) : null}
      <Section title="Temperature strip" note="Filled: accepted windows. Outlined: proposed." wide>
        <TemperatureStrip view={view} />
      </Section>
      {view.refused.map(({ id, count }) => (
        <Notice key={id} kind="caution" title={`Reference ${id}`}>
          {count} readings have no temperature: an open circuit, or a wrong channel. They are kept and not
          drawn.
        </Notice>
      ))}
      <RoomSection actor={actor} number={view.head.number} />
      {view.head.note ? <Section title="Note">{view.head.note}</Section> : null}
      <ReportLine actor={actor} kind="run" name={view.head.number} />
    </RunPage>
  );
}
