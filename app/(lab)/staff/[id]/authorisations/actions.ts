"use server";
import { grantAuthorisation } from "@/lib/operations/authorisation/grant";
import { withdrawAuthorisation } from "@/lib/operations/authorisation/withdraw";
import { formAction } from "@/lib/web/form-action";
import { list, number, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const grant = formAction(grantAuthorisation, {
  parse: (data) => ({
    personId: text(data, "personId"),
    activity: text(data, "activity"),
    typeLetters: list(data, "typeLetters"),
    fromCelsius: number(data, "fromCelsius"),
    toCelsius: number(data, "toCelsius"),
    scope: text(data, "scope"),
    procedureId: text(data, "procedureId") || null,
    validFrom: text(data, "validFrom"),
    validUntil: text(data, "validUntil") || null,
    basis: text(data, "basis"),
  }),
  done: () => "Granted: it counts from its first day.",
});

const withdraw = formAction(withdrawAuthorisation, {
  parse: (data) => ({ authorisationId: text(data, "authorisationId"), reason: text(data, "reason") }),
  done: () => "Withdrawn from this moment. What was signed by it stays signed.",
});

export const grantAuthorisationAction = async (state: FormState, data: FormData) => grant(state, data);
export const withdrawAuthorisationAction = async (state: FormState, data: FormData) => withdraw(state, data);
