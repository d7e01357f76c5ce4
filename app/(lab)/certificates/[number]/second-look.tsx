import { ActionForm } from "@/app/_ui/action-form.client";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { secondLookAction } from "@/app/(lab)/review/actions";
import type { CertificatePage } from "@/lib/views/certificate-page";

/** Only where the performer signed off by policy. */
export function SecondLook({ page }: { readonly page: CertificatePage }) {
  const { secondLook } = page;
  if (!secondLook) return null;
  if (secondLook.look)
    return (
      <Section title="Second look">
        <p>
          Signed by whoever measured: {secondLook.reason} Second look by {secondLook.look.by},{" "}
          <Timestamp at={secondLook.look.at} precision="minute" />: {secondLook.look.finding}
        </p>
      </Section>
    );
  return (
    <Section title="Second look owed">
      <Notice kind="caution">
        Signed by whoever measured: {secondLook.reason} Somebody who neither measured nor signed looks at it.
      </Notice>
      {page.mayLook ? (
        <ActionForm action={secondLookAction} label="Second look">
          <input type="hidden" name="certificateId" value={page.id} />
          <TextArea name="finding" label="What you looked at and found" rows={3} />
          <div className="form-actions">
            <SubmitButton>Record the second look</SubmitButton>
          </div>
        </ActionForm>
      ) : null}
    </Section>
  );
}
