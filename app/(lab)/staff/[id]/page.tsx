import { ActionForm } from "@/app/_ui/action-form.client";
import { Breadcrumb } from "@/app/_ui/breadcrumb";
import { FieldList } from "@/app/_ui/field-list";
import { LinkButton } from "@/app/_ui/link-button";
import { Page } from "@/app/_ui/page";
import { Section } from "@/app/_ui/section";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { personView } from "@/lib/views/person";
import { requirePermission } from "@/lib/web/auth";
import { load } from "@/lib/web/load";
import { AccountSections } from "../account-sections";
import { changePersonAction, setPasswordAction, setPersonActiveAction } from "../actions";
import { PasswordField, PersonFields, RoleFields } from "../person-fields";

export const metadata = { title: "Person" };

type Props = { readonly params: Promise<{ readonly id: string }> };

export default async function PersonPage({ params }: Props) {
  const actor = await requirePermission("person.read");
  const person = await load(personView(actor, (await params).id, new Date()));
  const identity = (
    <>
      <input type="hidden" name="id" value={person.id} />
      <input type="hidden" name="version" value={person.version} />
    </>
  );
  return (
    <Page
      title={person.name}
      crumbs={<Breadcrumb trail={[{ label: "Staff", href: "/staff" }]} />}
      actions={
        person.customer ? null : (
          <LinkButton href={`/staff/${person.id}/authorisations`}>Authorisations</LinkButton>
        )
      }
      state={
        person.active ? (
          <StateMark state="done" label="Active" />
        ) : (
          <StateMark state="cancelled" label="Deactivated" />
        )
      }
    >
      <Section title="Record">
        <FieldList
          items={[
            { label: "Person of", value: person.customer ?? "the laboratory" },
            { label: "Since", value: <Timestamp at={person.createdAt} precision="day" /> },
          ]}
        />
        <ActionForm action={changePersonAction} label="Change this person">
          {identity}
          <PersonFields person={person} />
          {person.customer ? null : <RoleFields held={person.roles} />}
          <div className="form-actions">
            <SubmitButton>Save</SubmitButton>
          </div>
        </ActionForm>
      </Section>
      <AccountSections person={person} />
      <Section title="Lost password" note="Ends every session of this person.">
        <ActionForm action={setPasswordAction} label="Set a new initial password">
          <input type="hidden" name="id" value={person.id} />
          <PasswordField />
          <div className="form-actions">
            <SubmitButton kind="quiet">Set the password</SubmitButton>
          </div>
        </ActionForm>
      </Section>
      {person.isSelf ? null : (
        <Section
          title={person.active ? "Deactivate" : "Reactivate"}
          note="People are never deleted: what they did stays theirs."
        >
          <ActionForm action={setPersonActiveAction} label={person.active ? "Deactivate" : "Reactivate"}>
            {identity}
            <input type="hidden" name="active" value={person.active ? "no" : "yes"} />
            <div className="form-actions">
              <SubmitButton kind={person.active ? "danger" : "quiet"}>
                {person.active
                  ? `Deactivate ${person.name} and end their sessions`
                  : `Let ${person.name} sign in again`}
              </SubmitButton>
            </div>
          </ActionForm>
        </Section>
      )}
    </Page>
  );
}
