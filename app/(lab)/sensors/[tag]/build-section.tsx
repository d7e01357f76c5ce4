import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { FieldList } from "@/app/_ui/field-list";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { buildLines } from "@/lib/domain/sensor/build-draft";
import type { SensorPage } from "@/lib/views/sensor/sensor";
import { stateBuildAction } from "../actions";
import { BuildFields } from "../build-fields";

/** How it is made and what it has seen, as far as anybody stated it; stated anew until its run has started. */
export function BuildSection({ sensor }: { readonly sensor: SensorPage }) {
  const stated = buildLines(sensor.build).filter(({ value }) => value !== "");
  return (
    <Section title="Build and history" id="build" note="The gate before its run looks at this.">
      {stated.length === 0 ? (
        <p className="quiet">Nothing is stated yet.</p>
      ) : (
        <FieldList columns items={stated} />
      )}
      {sensor.mayStateBuild ? (
        <Disclosure summary="State how it is made">
          <ActionForm action={stateBuildAction} label="State how it is made">
            <input type="hidden" name="tag" value={sensor.tag} />
            <input type="hidden" name="version" value={sensor.version} />
            <BuildFields build={sensor.build} />
            <TextField
              name="reason"
              label="What was looked at or changed"
              maxLength={400}
              hint="Such as: lead replaced by bare tails, length measured."
            />
            <div className="form-actions">
              <SubmitButton>Record it</SubmitButton>
            </div>
          </ActionForm>
        </Disclosure>
      ) : null}
    </Section>
  );
}
