import Link from "next/link";
import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { isRole, roleLabels } from "@/lib/domain/staff/roles";
import { peopleView } from "@/lib/views/people";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { addPersonAction } from "./actions";
import { NewPersonFields } from "./person-fields";

export const metadata = { title: "Staff" };

const columns = [
  { key: "name", header: "Name" },
  { key: "email", header: "Signs in as" },
  { key: "roles", header: "Roles" },
  { key: "state", header: "State" },
];

const spoken = (roles: readonly string[]): string =>
  roles.map((role) => (isRole(role) ? roleLabels[role] : role)).join(", ");

export default async function StaffPage() {
  const actor = await requirePermission("person.read");
  const { people, customers } = await load(peopleView(actor));
  return (
    <Page
      title="Staff"
      lead="Everybody who can sign in: people of the laboratory by their roles, and people of customers, who see only their own orders."
      actions={<LinkButton href="/laboratory">The laboratory’s settings</LinkButton>}
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
              roles: person.customer ? `${spoken(person.roles)}: ${person.customer}` : spoken(person.roles),
              state: person.active ? (
                <StateMark state="done" label="Active" />
              ) : (
                <StateMark state="cancelled" label="Deactivated" />
              ),
            },
          }))}
        />
      </Section>
      <Section title="Add a person" id="add">
        <ActionForm action={addPersonAction} label="Add a person">
          <NewPersonFields customers={customers} />
          <div className="form-actions">
            <SubmitButton>Add the person</SubmitButton>
          </div>
        </ActionForm>
      </Section>
    </Page>
  );
}
