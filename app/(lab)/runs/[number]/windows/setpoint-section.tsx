import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import type { RunWindowsView } from "@/lib/views/run/run-windows";
import { celsiusText } from "../../run-marks";
import { AcceptForm } from "./accept-form";
import { SensorStates } from "./sensor-states";
import { SetpointWait } from "./setpoint-wait";
import { WindowNumbers } from "./window-numbers";

type Setpoint = RunWindowsView["setpoints"][number];

const standing = ({ accepted, proposal }: Setpoint) =>
  accepted ? (
    <StateMark
      state="verified"
      label={accepted.origin === "proposed" ? "Accepted as proposed" : "Moved and accepted"}
    />
  ) : proposal.kind === "proposed" ? (
    <StateMark state="waiting" label="Proposed" />
  ) : (
    <StateMark state="open" label="No window" />
  );

export function SetpointSection({
  view,
  setpoint,
}: {
  readonly view: RunWindowsView;
  readonly setpoint: Setpoint;
}) {
  const { accepted, proposal } = setpoint;
  return (
    <Section
      title={`${celsiusText(setpoint.celsius)} °C`}
      id={`setpoint-${setpoint.position}`}
      note={standing(setpoint)}
    >
      {accepted ? (
        <>
          <WindowNumbers window={accepted.assessment} />
          {accepted.assessment.reason ? <p>Accepted nevertheless: {accepted.assessment.reason}</p> : null}
        </>
      ) : proposal.kind === "proposed" ? (
        <WindowNumbers window={proposal.window} />
      ) : setpoint.wait ? (
        <SetpointWait wait={setpoint.wait} />
      ) : (
        <p>{proposal.reason || "There are no readings of the references."}</p>
      )}
      {view.head.mayEvaluate ? <AcceptForm view={view} setpoint={setpoint} /> : null}
      <SensorStates view={view} setpoint={setpoint} />
    </Section>
  );
}
