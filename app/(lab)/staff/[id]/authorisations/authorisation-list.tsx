import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { FieldList } from "@/app/_ui/field-list";
import { StateMark } from "@/app/_ui/state-mark";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import { TextArea } from "@/app/_ui/text-area.client";
import { Timestamp } from "@/app/_ui/timestamp";
import type { AuthorisationsPage } from "@/lib/views/authorisations";
import { withdrawAuthorisationAction } from "./actions";

type Held = AuthorisationsPage["held"][number];

const marks = {
  "in-force": { state: "done", label: "In force" },
  "not-yet": { state: "waiting", label: "Not begun" },
  ended: { state: "out-of-date", label: "Over" },
  withdrawn: { state: "cancelled", label: "Withdrawn" },
} as const;

function Withdraw({ held }: { readonly held: Held }) {
  return (
    <Disclosure summary={`Withdraw: ${held.activity.toLowerCase()}, ${held.types}`}>
      <ActionForm action={withdrawAuthorisationAction} label="Withdraw the authorisation">
        <input type="hidden" name="authorisationId" value={held.id} />
        <TextArea name="reason" label="Why it ends" hint="Kept with it. It ends at this moment." rows={2} />
        <div className="form-actions">
          <SubmitButton kind="danger">Withdraw it</SubmitButton>
        </div>
      </ActionForm>
    </Disclosure>
  );
}

/** Each with its grounds and its end; those that are over stay listed. */
export function AuthorisationList({ page }: { readonly page: AuthorisationsPage }) {
  if (page.held.length === 0) return <p className="quiet">None was ever granted.</p>;
  return (
    <ul className="plain-list">
      {page.held.map((held) => (
        <li key={held.id}>
          <h3>
            {held.activity} <StateMark {...marks[held.state]} />
          </h3>
          <FieldList
            items={[
              { label: "Types and range", value: `${held.types}, ${held.range}` },
              { label: "Scope", value: held.scope },
              { label: "Procedure", value: held.procedure },
              { label: "Days", value: `${held.validFrom} to ${held.validUntil ?? "its withdrawal"}` },
              { label: "Grounds", value: held.basis },
              {
                label: "Granted",
                value: (
                  <>
                    <Timestamp at={held.grantedAt} precision="minute" /> by {held.grantedBy}
                  </>
                ),
              },
              ...(held.withdrawal
                ? [
                    {
                      label: "Withdrawn",
                      value: (
                        <>
                          <Timestamp at={held.withdrawal.at} precision="minute" /> by {held.withdrawal.by}:{" "}
                          {held.withdrawal.reason}
                        </>
                      ),
                    },
                  ]
                : []),
            ]}
          />
          {page.mayWithdraw && (held.state === "in-force" || held.state === "not-yet") ? (
            <Withdraw held={held} />
          ) : null}
        </li>
      ))}
    </ul>
  );
}
