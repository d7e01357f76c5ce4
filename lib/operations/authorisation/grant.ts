import { insertAuthorisation } from "@/lib/data/authorisation/authorisation-store";
import { loadPerson } from "@/lib/data/staff/person-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { authorisationEvents } from "@/lib/domain/authorisation/events";
import { AuthorisationInput } from "@/lib/domain/authorisation/schema";
import { Refused } from "@/lib/domain/refusal";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

const refusedAt = (field: string, message: string): Refused =>
  new Refused({
    code: "invalid",
    message: "Nothing was granted; what you typed is still here.",
    fields: { [field]: message },
  });

/** Another person says what somebody may answer for, on grounds that are kept. ISO/IEC 17025 6.2.5, 6.2.6. */
export const grantAuthorisation = defineOperation({
  name: "authorisation/grant",
  permission: "person.authorise",
  input: AuthorisationInput,
  perform: async ({ actor, now, tx }, { typeLetters, ...input }) => {
    const grantedById = personIdOf(actor);
    const person = await loadPerson(tx, input.personId);
    if (!person || person.customerId !== null)
      throw new Refused({ code: "not-found", message: "This person of the laboratory is not here." });
    if (person.id === grantedById)
      throw new Refused({
        code: "rule",
        message: "Nobody authorises themselves: another quality manager grants this. Nothing was granted.",
      });
    if (!person.active) throw refusedAt("personId", "This person is deactivated.");
    if (input.validUntil !== null && input.validUntil < now.toISOString().slice(0, 10))
      throw refusedAt("validUntil", "This day is over already.");
    if (input.procedureId !== null && !(await tx.procedure.findUnique({ where: { id: input.procedureId } })))
      throw refusedAt("procedureId", "Choose the procedure from the list.");
    const authorisation = { ...input, typeLetters: typeLetters.join("") };
    const id = await insertAuthorisation(tx, { ...authorisation, grantedById, grantedAt: now });
    const { basis: _, ...payload } = authorisation;
    return { value: { id }, events: [eventOf(authorisationEvents.granted, id, payload)] };
  },
});
