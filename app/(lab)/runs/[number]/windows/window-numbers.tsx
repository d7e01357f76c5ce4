import { FieldList } from "@/app/_ui/field-list";
import { StateMark } from "@/app/_ui/state-mark";
import type { JudgedWindow } from "@/lib/views/run/run-windows";

/** The numbers a window is judged by, each with its limit. */
export function WindowNumbers({ window }: { readonly window: JudgedWindow }) {
  const { criterion } = window;
  return (
    <>
      <FieldList
        columns
        items={[
          {
            label: "From, to",
            value: `${window.fromSeconds.toFixed(1)} s, ${window.toSeconds.toFixed(1)} s`,
          },
          {
            label: "Length",
            value: `${(window.lengthSeconds / 60).toFixed(1)} min, at least ${criterion.minimumSeconds / 60} min`,
          },
          {
            label: "Drift over it (|slope| × length)",
            value: `${window.slopeTimesLengthCelsius.toFixed(3)} °C, at most ${criterion.slopeTimesLengthCelsius} °C`,
          },
          {
            label: "References differ by",
            value:
              window.differenceCelsius === null
                ? "one reference: nothing to compare"
                : `${window.differenceCelsius.toFixed(3)} °C, at most ${criterion.agreementCelsius.toFixed(3)} °C (U of the difference)`,
          },
          { label: "Largest spread", value: `${window.spreadCelsius.toFixed(3)} °C` },
          { label: "Mean of the references", value: `${window.meanCelsius.toFixed(3)} °C` },
        ]}
      />
      <p>
        <StateMark
          state={window.meets ? "stable" : "unstable"}
          label={window.meets ? "Meets the criterion" : "Does not meet the criterion"}
        />
      </p>
      {window.reasons.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
    </>
  );
}
