import { FieldList } from "@/app/_ui/field-list";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { Timestamp } from "@/app/_ui/timestamp";
import type { SensorPage } from "@/lib/views/sensor/sensor";

type Intake = NonNullable<SensorPage["intake"]>;

const verdictStates = {
  within: "pass",
  outside: "fail",
  "no-limit": "not-decidable",
  "not-checked": "open",
} as const;

const withUnit = (value: number | null, unit: string): string => (value === null ? "" : `${value} ${unit}`);

type Props = {
  readonly intake: Intake;
  /** The customer answered about it, and its hold has ended. */
  readonly isTold: boolean;
};

/** How it came: identity apart, what was seen and checked (ISO/IEC 17025:2017, 7.4.2 and 7.4.3). */
export function IntakeFacts({ intake, isTold }: Props) {
  return (
    <Section title="Intake" id="intake">
      {intake.findings.length > 0 ? (
        <Notice
          kind={isTold ? "info" : "caution"}
          title={
            isTold
              ? "Found on arrival; the customer was told"
              : "Caution: tell the customer before it is loaded"
          }
        >
          <ul className="list">
            {intake.findings.map((finding) => (
              <li key={finding}>{finding}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
      <FieldList
        columns
        items={[
          { label: "Received on", value: intake.receivedOn },
          {
            label: "Condition",
            value: intake.conditionNote ? `${intake.condition}: ${intake.conditionNote}` : intake.condition,
          },
          { label: "Loop resistance", value: withUnit(intake.loopResistanceOhm, "Ω") },
          { label: "Insulation resistance", value: withUnit(intake.insulationMegaohm, "MΩ") },
          { label: "Polarity", value: intake.polarity },
          { label: "Type check", value: intake.typeCheck },
          { label: "Measuring junction", value: intake.grounding },
          {
            label: "Taken in",
            value: (
              <>
                <Timestamp at={intake.takenInAt} />, {intake.takenInBy}
              </>
            ),
          },
        ]}
      />
      <h3>Against the limits of the day it came</h3>
      <ul className="list">
        {intake.checks.map(({ check, verdict, verdictLabel, words }) => (
          <li key={check}>
            {check}: <StateMark state={verdictStates[verdict]} label={verdictLabel} /> ({words})
          </li>
        ))}
      </ul>
    </Section>
  );
}
