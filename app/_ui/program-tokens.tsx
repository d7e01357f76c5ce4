import { ActionForm } from "@/app/_ui/action-form.client";
import { CheckboxField } from "@/app/_ui/checkbox-field.client";
import { DataTable } from "@/app/_ui/data-table";
import { EmptyState } from "@/app/_ui/empty-state";
import { FieldError } from "@/app/_ui/field-error.client";
import { FieldGroup } from "@/app/_ui/field-group";
import { SelectField } from "@/app/_ui/select-field.client";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextField } from "@/app/_ui/text-field.client";
import { Timestamp } from "@/app/_ui/timestamp";
import { type TokenScope, tokenScopeLabels } from "@/lib/domain/machine/scopes";
import type { ProgramToken } from "@/lib/views/machine/programs";
import type { FormAction } from "@/lib/web/form-action";

const columns = [
  { key: "name", header: "Program" },
  { key: "opens", header: "Opens" },
  { key: "until", header: "Until" },
  { key: "used", header: "Last used" },
  { key: "state", header: "State" },
  { key: "end", header: "If it is no longer wanted" },
];

const marks = {
  "in-force": { state: "active", label: "In force" },
  revoked: { state: "cancelled", label: "Revoked" },
  expired: { state: "done", label: "Past its day" },
} as const;

type TableProps = { readonly tokens: readonly ProgramToken[]; readonly revoke: FormAction };

export function TokenTable({ tokens, revoke }: TableProps) {
  return (
    <DataTable
      caption="Tokens"
      captionUnseen
      columns={columns}
      rows={tokens.map((token) => ({
        key: token.id,
        cells: {
          name: (
            <>
              {token.name}
              <div className="quiet">
                <code>{token.beginning}…</code>
              </div>
            </>
          ),
          opens: token.opens.join("; "),
          until: <Timestamp at={token.expiresAt} precision="day" />,
          used: token.lastUsedAt ? <Timestamp at={token.lastUsedAt} /> : "never",
          state: <StateMark {...marks[token.state]} />,
          end:
            token.state === "in-force" ? (
              <ActionForm action={revoke} label={`Revoke ${token.name}`}>
                <input type="hidden" name="id" value={token.id} />
                <SubmitButton kind="quiet">Revoke</SubmitButton>
              </ActionForm>
            ) : (
              ""
            ),
        },
      }))}
      empty={
        <EmptyState title="No tokens yet">
          A token lets one program read, without anybody’s password, and can be revoked by itself.
        </EmptyState>
      }
    />
  );
}

type NewProps = { readonly make: FormAction; readonly scopes: readonly TokenScope[] };

export function NewToken({ make, scopes }: NewProps) {
  return (
    <ActionForm action={make} label="Make a token">
      <TextField
        name="name"
        label="For which program"
        hint="So that you know it when it comes to revoking it."
      />
      <FieldGroup legend="What it opens">
        {scopes.map((scope) => (
          <CheckboxField key={scope} name="scopes" value={scope} label={tokenScopeLabels[scope]} />
        ))}
        <FieldError name="scopes" />
      </FieldGroup>
      <SelectField
        name="days"
        label="How long it lasts"
        choices={[
          { value: "90", label: "90 days" },
          { value: "365", label: "One year" },
          { value: "730", label: "Two years" },
        ]}
        defaultValue="365"
      />
      <div className="form-actions">
        <SubmitButton>Make the token</SubmitButton>
      </div>
    </ActionForm>
  );
}
