import { FieldList } from "@/app/_ui/field-list";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import type { ReviewResultPage } from "@/lib/views/review-result";
import { RemarksAt } from "./remarks";

/** Place, tip check, and what the certificate will say deviates. */
export function CheckSection({ result }: { readonly result: ReviewResultPage }) {
  const { tip, deviations, obstacle } = result;
  return (
    <Section title="Load and deviations">
      {obstacle ? <Notice kind="caution">{obstacle}</Notice> : null}
      <FieldList
        items={[
          { label: "Place and channel", value: `${tip.place}, channel ${tip.channel}` },
          {
            label: "Immersion",
            value: tip.immersionMillimetre === null ? "" : `${tip.immersionMillimetre} mm`,
          },
          {
            label: "Warm-each-tip check",
            value: tip.check ? (
              <>
                <StateMark
                  state={tip.check.onlyThisChannel ? "done" : "exception"}
                  label={tip.check.onlyThisChannel ? "Only this channel rose" : "Other channels moved too"}
                />{" "}
                by {tip.check.riseMicrovolt} µV; {tip.check.by},{" "}
                <Timestamp at={tip.check.at} precision="minute" />
              </>
            ) : (
              <StateMark state="exception" label="Not recorded" />
            ),
          },
        ]}
      />
      {deviations.length === 0 ? (
        <p>The certificate states no deviation.</p>
      ) : (
        <ul className="plain-list">
          {deviations.map((deviation) => (
            <li key={deviation}>{deviation}</li>
          ))}
        </ul>
      )}
      <RemarksAt duty={result.duty} place="draft" />
    </Section>
  );
}
