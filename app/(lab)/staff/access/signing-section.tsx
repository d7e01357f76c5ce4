import { ActionForm } from "@/app/_ui/action-form.client";
import { NumberField } from "@/app/_ui/number-field.client";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import type { SigningPolicy } from "@/lib/domain/signing/policy";
import { changeSigningPolicyAction } from "./actions";

type Props = { readonly policy: SigningPolicy; readonly version: number };

/** When both password and one-time code are asked for again. */
export function SigningSection({ policy, version }: Props) {
  return (
    <Section
      title="Signing"
      note="The first signature of a session needs password and one-time code, each further one at least one of them."
    >
      <ActionForm action={changeSigningPolicyAction} label="How long a session of signing lasts">
        <input type="hidden" name="version" value={version} />
        <NumberField
          name="policy.windowMinutes"
          label="Both are asked for again after the last signature by"
          unit="min"
          hint="1 to 60."
          defaultValue={policy.windowMinutes}
        />
        <NumberField
          name="policy.longestHours"
          label="And at the latest after"
          unit="h"
          hint="1 to 12."
          defaultValue={policy.longestHours}
        />
        <div className="form-actions">
          <SubmitButton>Save how signing goes</SubmitButton>
        </div>
      </ActionForm>
    </Section>
  );
}
