import type { ReactNode } from "react";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import type { FormState } from "@/lib/web/form-state";

type Props = {
  readonly of: { readonly number: string; readonly version: number };
  readonly action: (state: FormState, data: FormData) => Promise<FormState>;
  readonly summary: string;
  readonly label: string;
  readonly hint?: string;
  readonly kind?: "primary" | "quiet" | "danger";
  readonly children?: ReactNode;
};

/** One step of the story behind its own line: words, and what else it needs. */
export function StepForm({ of, action, summary, label, hint, kind = "quiet", children }: Props) {
  return (
    <Disclosure summary={summary}>
      <ActionForm action={action} label={summary}>
        <input type="hidden" name="number" value={of.number} />
        <input type="hidden" name="version" value={of.version} />
        {children}
        <TextArea name="text" label={label} hint={hint} rows={3} maxLength={4000} />
        <div className="form-actions">
          <SubmitButton kind={kind}>{summary}</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}
