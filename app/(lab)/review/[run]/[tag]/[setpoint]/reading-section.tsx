import { ChannelChart } from "@/app/_ui/drawing/channel-chart";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import type { ReviewResultPage } from "@/lib/views/review-result";
import { RemarksAt } from "./remarks";

const minutes = (seconds: number): string => (seconds / 60).toFixed(1);

function WindowText({ window }: { readonly window: ReviewResultPage["window"] }) {
  if (!window) return <p>No stability window was accepted at this setpoint.</p>;
  return (
    <>
      <p>
        <StateMark state={window.meets === false ? "unstable" : "stable"} /> Window from minute{" "}
        {minutes(window.fromSeconds)} to {minutes(window.toSeconds)},{" "}
        {window.origin === "moved" ? "moved by hand" : "accepted as proposed"} by {window.acceptedBy},{" "}
        <Timestamp at={window.acceptedAt} precision="minute" />.
      </p>
      {window.reasons.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
    </>
  );
}

/** The readings within the window, sensor first; typed ones are marked. */
export function ReadingSection({ result }: { readonly result: ReviewResultPage }) {
  const { window, traces, blocks } = result;
  return (
    <Section title="Readings" wide>
      <WindowText window={window} />
      <RemarksAt duty={result.duty} place="window" />
      {traces.length === 0 ? <p>No readings are stored for these channels.</p> : null}
      {traces.map((trace) => (
        <ChannelChart
          key={trace.channel}
          caption={`${trace.label}, channel ${trace.channel}, as read within the window.`}
          view={{
            title: `${trace.label}, channel ${trace.channel}`,
            unit: "µV",
            seconds: trace.seconds,
            values: trace.values,
          }}
        />
      ))}
      <ul className="plain-list">
        {blocks.map((block) => (
          <li key={block.sequence}>
            {block.source === "typed" ? (
              <StateMark state="exception" label="Typed by hand, twice" />
            ) : (
              `File ${block.fileName || "without a name"}`
            )}
            , block {block.sequence}, by {block.by}, <Timestamp at={block.at} precision="minute" />
          </li>
        ))}
      </ul>
    </Section>
  );
}
