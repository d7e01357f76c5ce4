import { Section } from "@/app/_ui/section";
import { Timestamp } from "@/app/_ui/timestamp";
import type { CharacterisationRunView } from "@/lib/views/characterisation-run";
import { decideCharacterisationAction } from "./actions";
import { DecisionForm } from "./decision-form";
import { DecisionMark } from "./decision-mark";

/** What was submitted, and what another person said of it. */
export function CharacterisationOutcome({ view }: { readonly view: CharacterisationRunView }) {
  return (
    <>
      {view.characterisations.map((one) => (
        <Section key={one.id} title="Submitted" note={<DecisionMark state={one.state} />}>
          <p>
            {one.statement} Measured <Timestamp at={one.performedOn} precision="day" />, holds until{" "}
            <Timestamp at={one.validUntil} precision="day" />.
          </p>
          {one.reason ? <p>{one.reason}</p> : null}
          {one.mayDecide ? (
            <DecisionForm
              id={one.id}
              action={decideCharacterisationAction}
              what={`the characterisation ${view.number}`}
              acceptHint="Runs made from now on rest on it, until its last day."
            />
          ) : null}
        </Section>
      ))}
    </>
  );
}
