import { loadAuthorisationHistory } from "@/lib/data/authorisation/authorisation-store";
import { loadPeopleNames } from "@/lib/data/review/load-people-names";
import { loadPerson } from "@/lib/data/staff/person-store";
import { activityLabels, authorisationState, scopeLabels } from "@/lib/domain/authorisation/authorisation";
import { rangeWords, typesWords } from "@/lib/domain/authorisation/words";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

/** What one person may answer for, and ever might: with whoever granted and withdrew it, and on what grounds. */
export const authorisationsView = (actor: Actor, personId: string, now: Date) =>
  answer(actor, "person.read", async (tx) => {
    const person = found(await loadPerson(tx, personId));
    found(person.customerId === null ? person : null);
    const history = await loadAuthorisationHistory(tx, person.id);
    const names = await loadPeopleNames(
      tx,
      history.flatMap(({ grantedById, withdrawal }) => [
        grantedById,
        ...(withdrawal ? [withdrawal.withdrawnById] : []),
      ]),
    );
    const procedures = await tx.procedure.findMany({ orderBy: { key: "asc" } });
    const isSelf = actor.kind !== "system" && actor.personId === person.id;
    return {
      personId: person.id,
      name: person.name,
      isSignatory: person.roles.includes("signatory"),
      isSelf,
      mayGrant: actor.kind === "staff" && may(actor.roles, "person.authorise") && !isSelf && person.active,
      mayWithdraw: actor.kind === "staff" && may(actor.roles, "person.authorise"),
      today: now.toISOString().slice(0, 10),
      procedures: procedures.map(({ id, title }) => ({ value: id, label: title })),
      held: history.map((one) => ({
        id: one.id,
        state: authorisationState(one, now),
        activity: activityLabels[one.activity],
        types: typesWords(one.typeLetters),
        range: rangeWords(one),
        scope: scopeLabels[one.scope],
        procedure: procedures.find(({ id }) => id === one.procedureId)?.title ?? "every procedure",
        validFrom: one.validFrom,
        validUntil: one.validUntil,
        basis: one.basis,
        grantedBy: names.get(one.grantedById) ?? "",
        grantedAt: one.grantedAt.toISOString(),
        withdrawal: one.withdrawal && {
          by: names.get(one.withdrawal.withdrawnById) ?? "",
          at: one.withdrawal.withdrawnAt.toISOString(),
          reason: one.withdrawal.reason,
        },
      })),
    };
  });

export type AuthorisationsPage = Awaited<ReturnType<typeof authorisationsView>>;
