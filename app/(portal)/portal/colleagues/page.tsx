import type { Metadata } from "next";
import { ActionForm } from "@/app/_ui/action-form.client";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { portalColleaguesView } from "@/lib/views/portal/colleagues";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { inviteColleagueAction, withdrawInvitationAction } from "./actions";
import { ColleagueItem } from "./colleague-item";
import { Rights } from "./rights";

export const metadata: Metadata = { title: "Your colleagues" };

export default async function ColleaguesPage() {
  const actor = await requirePermission("portal.manage");
  const { people, invitations } = await load(portalColleaguesView(actor, new Date()));
  return (
    <Page title="Your colleagues" lead="Who of you can sign in here, and what each of them may do.">
      <Section title="People">
        <ul className="stack plain-list">
          {people.map((person) => (
            <ColleagueItem key={person.id} person={person} />
          ))}
        </ul>
      </Section>
      {invitations.length > 0 ? (
        <Section title="Invited, not here yet">
          <ul className="plain-list">
            {invitations.map(({ id, email, name, expiresAt }) => (
              <li key={id}>
                {name} ({email}), the invitation is open until <Timestamp at={expiresAt} precision="day" />
                <ActionForm action={withdrawInvitationAction} shape="inline" label={`Invitation of ${name}`}>
                  <input type="hidden" name="id" value={id} />
                  <SubmitButton kind="quiet">Withdraw it</SubmitButton>
                </ActionForm>
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
      <Section
        title="Invite a colleague"
        note="They get a letter with a link and choose a password of their own."
      >
        <ActionForm action={inviteColleagueAction} label="Invite a colleague">
          <TextField name="name" label="Name" maxLength={120} />
          <TextField name="email" type="email" label="E-mail" maxLength={200} />
          <Rights mayOrder={false} mayManage={false} />
          <div className="form-actions">
            <SubmitButton>Invite</SubmitButton>
          </div>
        </ActionForm>
      </Section>
    </Page>
  );
}
