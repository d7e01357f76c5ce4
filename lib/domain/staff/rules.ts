import { ok, type Result, refuse } from "../refusal";
import { isRole, type Role } from "./roles";

type Held = { readonly customerId: string | null; readonly roles: readonly string[] };

/** A laboratory without an active quality manager could not make another one. */
export const decideRoles = (
  person: Held,
  wanted: readonly Role[],
  otherQualityManagers: number,
): Result<readonly Role[]> => {
  if (person.customerId !== null)
    return wanted.length === 0
      ? // What a customer's people may do among themselves is theirs to say.
        ok(person.roles.filter(isRole))
      : refuse("rule", "People of a customer hold no role of the laboratory. Nothing was changed.", {
          roles: "Leave these empty.",
        });
  if (wanted.length === 0)
    return refuse("invalid", "Somebody of the laboratory holds at least one role. Nothing was changed.", {
      roles: "Choose at least one role.",
    });
  if (
    person.roles.includes("quality-manager") &&
    !wanted.includes("quality-manager") &&
    otherQualityManagers === 0
  )
    return refuse("rule", "This is the only active quality manager. Give the role to somebody else first.", {
      roles: "Keep the quality manager here.",
    });
  return ok(wanted);
};

export const decideDeactivation = (
  person: Held & { readonly id: string },
  byPersonId: string | null,
  otherQualityManagers: number,
): Result<true> => {
  if (person.id === byPersonId)
    return refuse("rule", "You cannot deactivate yourself. Ask another quality manager.");
  if (person.roles.includes("quality-manager") && otherQualityManagers === 0)
    return refuse("rule", "This is the only active quality manager. Give the role to somebody else first.");
  return ok(true);
};
