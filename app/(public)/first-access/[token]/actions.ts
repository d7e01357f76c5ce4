"use server";
import { acceptFirstAccess } from "@/lib/operations/staff/accept-first-access";
import { flag, secret, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";
import { publicAction } from "@/lib/web/public-action";

const accept = publicAction(acceptFirstAccess, "first-access", {
  parse: (data) => ({
    token: text(data, "token"),
    laboratory: {
      name: text(data, "laboratory.name"),
      addressLines: text(data, "laboratory.addressLines"),
      contact: text(data, "laboratory.contact"),
      accreditationText: text(data, "laboratory.accreditationText"),
      accreditationNumber: text(data, "laboratory.accreditationNumber"),
      countryCode: text(data, "laboratory.countryCode"),
      performerMaySignOff: flag(data, "laboratory.performerMaySignOff"),
    },
    name: text(data, "name"),
    email: text(data, "email"),
    password: secret(data, "password"),
  }),
  redirect: "/sign-in?said=first-access",
});

export const acceptFirstAccessAction = async (state: FormState, data: FormData): Promise<FormState> =>
  accept(state, data);
