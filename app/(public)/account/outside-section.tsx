import { ActionForm } from "@/app/_ui/action-form.client";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { askOutsideLinkAction, unlinkOutsideAction } from "./actions";

/** Whether the organisation's own provider opens this account too. */
export function OutsideSection({ isLinked }: { readonly isLinked: boolean }) {
  return (
    <Section title="The organisation’s own provider" note={isLinked ? "Linked." : "Not linked."}>
      <p>
        {isLinked
          ? "Whoever it knows as you can sign in here as you. A one-time code is asked for all the same, where one is set up."
          : "Linked once, it opens this account beside the password. An address that is the same opens nothing by itself."}
      </p>
      <ActionForm
        action={isLinked ? unlinkOutsideAction : askOutsideLinkAction}
        label={isLinked ? "Part from the provider" : "Link with the provider"}
      >
        <TextField
          name="password"
          label="Your password"
          type="password"
          autoComplete="current-password"
          hint="Once more: a screen left open is not enough."
        />
        <div className="form-actions">
          <SubmitButton kind={isLinked ? "danger" : "quiet"}>
            {isLinked ? "Part from the provider" : "Link with the provider"}
          </SubmitButton>
        </div>
      </ActionForm>
    </Section>
  );
}
