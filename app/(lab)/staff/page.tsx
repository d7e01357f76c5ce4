import Link from "next/link";
import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { rolesText } from "@/lib/domain/staff/roles-text";
import { peopleView } from "@/lib/views/people";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { invitePersonAction } from "./actions";
import { InvitationSection } from "./invitation-section";
import { NewPersonFields } from "./person-fields";

export const metadata = { title: "Staff" };

const columns = [
  { key: "name", header: "Name" },
  { key: "email", header: "Signs in as" },
  { key: "roles", header: "Roles" },
  { key: "state", header: "State" },
];

export default async function StaffPage() {
  const actor = await requirePermission("person.read");
  const { people, customers, invitations } = await load(peopleView(actor, new Date()));
  return (
    <Page
      title="Staff"
      lead="Everybody who can sign in: people of the laboratory by their roles, and people of customers, who see only their own orders."
      actions={
        <>
          <LinkButton href="/staff/access">How people are let in</LinkButton>
          <LinkButton href="/laboratory">The laboratory’s settings</LinkButton>
        </>
      }
    >
      <Section title="People" wide>
        <DataTable
          caption="People who sign in"
          captionUnseen
          columns={columns}
          rows={people.map((person) => ({
            key: person.id,
            cells: {
              name: <Link href={`/staff/${person.id}`}>{person.name}</Link>,
              email: person.email,
              roles: person.customer
                ? `${rolesText(person.roles)}: ${person.customer}`
                : rolesText(person.roles),
              state: person.isLocked ? (
                <StateMark state="out-of-date" label="Locked for a while" />
              ) : person.active ? (
                <StateMark state="done" label="Active" />
              ) : (
                <StateMark state="cancelled" label="Deactivated" />
              ),
            },
          }))}
        />
      </Section>
      <InvitationSection invitations={invitations} />
      <Section
        title="Invite a person"
        id="add"
        note="A link goes to the address; whoever opens it sets a password."
      >
        <ActionForm action={invitePersonAction} label="Invite a person">
          <NewPersonFields customers={customers} />
          <div className="form-actions">
            <SubmitButton>Send the invitation</SubmitButton>
          </div>
        </ActionForm>
      </Section>
    </Page>
  );
}
