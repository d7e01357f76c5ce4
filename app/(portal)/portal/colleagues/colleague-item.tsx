import { ActionForm } from "@/app/_ui/action-form.client";
import { Disclosure } from "@/app/_ui/disclosure";
import { SubmitButton } from "@/app/_ui/submit-button.client";
import type { PortalColleague } from "@/lib/views/portal/colleagues";
import { changeColleagueRolesAction, setColleagueActiveAction } from "./actions";
import { Rights } from "./rights";

const row = ({ id, version }: PortalColleague) => (
  <>
    <input type="hidden" name="id" value={id} />
    <input type="hidden" name="version" value={version} />
  </>
);

const said = ({ active, mayOrder, mayManage }: PortalColleague): string =>
  active
    ? ["reads", mayOrder ? "orders and answers" : "", mayManage ? "invites and sets" : ""]
        .filter(Boolean)
        .join(", ")
    : "no longer has an account";

/** One person: what they may do, and how to change it. */
export function ColleagueItem({ person }: { readonly person: PortalColleague }) {
  return (
    <li>
      <h3>
        {person.name}
        {person.isSelf ? " (you)" : ""}
      </h3>
      <p className="quiet">
        {person.email}: {said(person)}.
      </p>
      {person.active ? (
        <Disclosure summary={`Change what ${person.name} may do`}>
          <ActionForm action={changeColleagueRolesAction} label={`Rights of ${person.name}`}>
            {row(person)}
            <Rights mayOrder={person.mayOrder} mayManage={person.mayManage} />
            <div className="form-actions">
              <SubmitButton>Save</SubmitButton>
            </div>
          </ActionForm>
        </Disclosure>
      ) : null}
      {person.isSelf ? null : (
        <ActionForm action={setColleagueActiveAction} shape="inline" label={`Account of ${person.name}`}>
          {row(person)}
          <input type="hidden" name="active" value={person.active ? "no" : "yes"} />
          <SubmitButton kind="quiet">
            {person.active ? `End the account of ${person.name}` : `Let ${person.name} in again`}
          </SubmitButton>
        </ActionForm>
      )}
    </li>
  );
}
