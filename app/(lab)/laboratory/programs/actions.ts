"use server";
import { makeLaboratoryToken } from "@/lib/operations/machine/make-token";
import { revokeAnyToken } from "@/lib/operations/machine/revoke-token";
import { formAction } from "@/lib/web/form-action";
import { list, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const make = formAction(makeLaboratoryToken, {
  parse: (data) => ({ name: text(data, "name"), scopes: list(data, "scopes"), days: text(data, "days") }),
  done: ({ token }) => `Made. Copy it now, it is not shown again: ${token}`,
});
const revoke = formAction(revokeAnyToken, {
  parse: (data) => ({ id: text(data, "id") }),
  done: () => "Revoked: it opens nothing any more.",
});

export const makeLaboratoryTokenAction = async (state: FormState, data: FormData) => make(state, data);
export const revokeAnyTokenAction = async (state: FormState, data: FormData) => revoke(state, data);
