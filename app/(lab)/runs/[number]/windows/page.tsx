import { Section } from "@/app/_ui/section";
import { runWindowsView } from "@/lib/views/run/run-windows";
import { requireStaff } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { RunPage } from "../run-page";
import { TemperatureStrip } from "../temperature-strip";
import { SetpointSection } from "./setpoint-section";

type Props = { readonly params: Promise<{ readonly number: string }> };

export const generateMetadata = async ({ params }: Props) => ({
  title: `Windows of ${(await params).number}`,
});

export default async function RunWindowsPage({ params }: Props) {
  const actor = await requireStaff();
  const view = await load(runWindowsView(actor, (await params).number));
  return (
    <RunPage head={view.head} at="windows">
      <Section
        title="Temperature strip"
        note="A window with a solid line on top is accepted, with a dashed one proposed."
        wide
      >
        <TemperatureStrip view={view} />
      </Section>
      {view.setpoints.map((setpoint) => (
        <SetpointSection key={setpoint.id} view={view} setpoint={setpoint} />
      ))}
    </RunPage>
  );
}
