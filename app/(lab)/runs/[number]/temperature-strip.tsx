import { RunChart } from "@/app/_ui/drawing/run-chart";
import { EmptyState } from "@/app/_ui/empty-state";
import type { RunStripView } from "@/lib/drawing/run-strip";
import type { RunWindowsView } from "@/lib/views/run/run-windows";
import { celsiusText } from "../run-marks";

type Window = RunStripView["windows"][number];

const windowOf = ({ celsius, accepted, proposal }: RunWindowsView["setpoints"][number]): Window[] => {
  const label = `${celsiusText(celsius)} °C`;
  if (accepted)
    return [{ label, fromSeconds: accepted.fromSeconds, toSeconds: accepted.toSeconds, state: "accepted" }];
  if (proposal.kind === "none") return [];
  const { fromSeconds, toSeconds } = proposal.window;
  return [{ label, fromSeconds, toSeconds, state: "proposed" }];
};

/** The references' temperatures over the run, with each setpoint's window: accepted, or still proposed. */
export function TemperatureStrip({ view }: { readonly view: RunWindowsView }) {
  if (view.traces.every(({ seconds }) => seconds.length === 0))
    return view.head.state === "abandoned" ? (
      <EmptyState title="No readings">
        The run was abandoned before readings of the references came in.
      </EmptyState>
    ) : (
      <EmptyState title="No readings yet">
        Once readings are in, the references&apos; temperatures stand here with a proposed window at each
        setpoint.
      </EmptyState>
    );
  return (
    <RunChart
      view={{
        title: `Temperatures of run ${view.head.number}`,
        traces: view.traces,
        setpoints: view.setpoints.map(({ celsius }) => ({
          label: `${celsiusText(celsius)} °C`,
          nominalCelsius: celsius,
        })),
        windows: view.setpoints.flatMap(windowOf),
      }}
    />
  );
}
