import type { Metadata } from "next";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SelectField } from "@/app/_ui/select-field.client";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { TextField } from "@/app/_ui/text-field.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { may } from "@/lib/domain/staff/permissions";
import { portalComplaintsView } from "@/lib/views/portal/complaints";
import { requireCustomer } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { complainAction } from "./actions";

export const metadata: Metadata = { title: "Not as it should be" };

type Props = { readonly searchParams: Promise<{ readonly order?: string }> };

const subjects = [
  { value: "order", label: "An order" },
  { value: "certificate", label: "A certificate" },
  { value: "sensor", label: "A sensor, by our label" },
];

export default async function ComplaintsPage({ searchParams }: Props) {
  const actor = await requireCustomer();
  const complaints = await load(portalComplaintsView(actor));
  const { order } = await searchParams;
  return (
    <Page
      title="Not as it should be"
      lead="Tell us. Somebody who did not do the work looks into it, and you are told what came of it."
    >
      {may(actor.roles, "portal.order") ? (
        <Section title="Tell us">
          <ActionForm action={complainAction} label="Tell us">
            <div className="fields">
              <SelectField name="subjectKind" label="It is about" choices={subjects} />
              <TextField
                name="subjectName"
                label="Its number"
                maxLength={60}
                defaultValue={typeof order === "string" ? order : undefined}
              />
            </div>
            <TextField name="title" label="In one line" maxLength={160} />
            <TextArea name="description" label="What happened" rows={5} maxLength={4000} />
            <div className="form-actions">
              <SubmitButton>Send it</SubmitButton>
            </div>
          </ActionForm>
        </Section>
      ) : null}
      <Section title="What you told us">
        {complaints.length === 0 ? <p>Nothing so far.</p> : null}
        <ul className="stack plain-list">
          {complaints.map((complaint) => (
            <li key={complaint.number}>
              <h3>
                {complaint.number}: {complaint.title}
              </h3>
              <p className="quiet">
                About {complaint.about}, <Timestamp at={complaint.openedAt} precision="day" />.{" "}
                {complaint.isClosed ? "Closed." : "We are looking into it."}
              </p>
              <p className="lines">{complaint.description}</p>
              {complaint.told.map(({ text, at }) => (
                <div key={at}>
                  <p>
                    <Timestamp at={at} precision="day" />, we:
                  </p>
                  <p className="lines">{text}</p>
                </div>
              ))}
            </li>
          ))}
        </ul>
      </Section>
    </Page>
  );
}
