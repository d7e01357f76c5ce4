import { ok, type Result, refuse } from "../refusal";

type Colleague = {
  readonly id: string;
  readonly active: boolean;
  readonly roles: readonly string[];
};

const isLastManager = (colleague: Colleague, otherManagers: number): boolean =>
  colleague.active && colleague.roles.includes("customer-manager") && otherManagers === 0;

/** Somebody of a customer has to be able to invite the next. */
export const decideColleagueRoles = (
  colleague: Colleague,
  wanted: readonly string[],
  otherManagers: number,
): Result<readonly string[]> => {
  if (!wanted.includes("customer-manager") && isLastManager(colleague, otherManagers))
    return refuse(
      "rule",
      "Nobody else of you may invite colleagues. Give that right to somebody else first; nothing was changed.",
      { roles: "Keep this ticked here until somebody else has it." },
    );
  return colleague.roles.toSorted().join() === wanted.toSorted().join()
    ? refuse("rule", "Nothing differs from what is stored.")
    : ok(wanted);
};

export const decideColleagueActive = (
  colleague: Colleague,
  active: boolean,
  byPersonId: string,
  otherManagers: number,
): Result<boolean> => {
  if (colleague.active === active) return refuse("wrong-state", "That is so already; nothing was changed.");
  if (!active && colleague.id === byPersonId)
    return refuse("rule", "You cannot end your own account. Ask a colleague; nothing was changed.");
  if (!active && isLastManager(colleague, otherManagers))
    return refuse(
      "rule",
      "Nobody else of you may invite colleagues. Give that right to somebody else first; nothing was changed.",
    );
  return ok(active);
};
