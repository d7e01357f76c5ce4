import { ActionForm } from "@/app/_ui/action-form.client";
import { DataTable } from "@/app/_ui/data-table";
import { Section } from "@/app/_ui/section";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { rolesText } from "@/lib/domain/staff/roles-text";
import { withdrawInvitationAction } from "./actions";

type Invitation = {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly roles: readonly string[];
  readonly expiresAt: string;
};

const columns = [
  { key: "name", header: "Name" },
  { key: "email", header: "Invited at" },
  { key: "roles", header: "Roles" },
  { key: "until", header: "Works until" },
  { key: "withdraw", header: "Withdraw" },
];

/** Invitations that wait for their person; none, no section. */
export function InvitationSection({ invitations }: { readonly invitations: readonly Invitation[] }) {
  if (invitations.length === 0) return null;
  return (
    <Section title="Invited" wide>
      <DataTable
        caption="Invitations that wait"
        captionUnseen
        columns={columns}
        rows={invitations.map(({ id, name, email, roles, expiresAt }) => ({
          key: id,
          cells: {
            name,
            email,
            roles: rolesText(roles),
            until: <Timestamp at={expiresAt} />,
            withdraw: (
              <ActionForm
                action={withdrawInvitationAction}
                shape="inline"
                label={`Withdraw the invitation of ${name}`}
              >
                <input type="hidden" name="id" value={id} />
                <SubmitButton kind="quiet">Withdraw</SubmitButton>
              </ActionForm>
            ),
          },
        }))}
      />
    </Section>
  );
}
