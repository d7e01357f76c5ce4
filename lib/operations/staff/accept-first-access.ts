import { z } from "zod";
import { insertLaboratory, loadLaboratory } from "@/lib/data/laboratory/laboratory-store";
import { installProcedures } from "@/lib/data/procedure/install-procedures";
import { takeFirstAccess } from "@/lib/data/staff/first-access-store";
import { countPeople, insertPerson } from "@/lib/data/staff/person-store";
import { eventOf } from "@/lib/domain/audit/define-event";
import { Refused } from "@/lib/domain/refusal";
import { staffEvents } from "@/lib/domain/staff/events";
import { LaboratoryInput } from "@/lib/domain/staff/laboratory-schema";
import { NewPassword } from "@/lib/domain/staff/password";
import { emailAddress, requiredLine } from "@/lib/domain/typed-text";
import { defineOperation } from "../operation";
import { hashPassword } from "../password-hash";

/** Takes the one-time link: the laboratory's record and the person who then lets everybody else in. */
export const acceptFirstAccess = defineOperation({
  name: "staff/accept-first-access",
  permission: "system",
  input: z.strictObject({
    token: z.string().max(100),
    laboratory: LaboratoryInput,
    name: requiredLine("Write your name as it stands on certificates.", 120),
    email: emailAddress,
    password: NewPassword,
  }),
  perform: async ({ now, tx }, { token, laboratory, name, email, password }) => {
    const taken = await takeFirstAccess(tx, token, now);
    if (!taken || (await countPeople(tx)) > 0)
      throw new Refused({
        code: "wrong-state",
        message: "This link was used already, or its day is over. Starting Emfolio again prints a new one.",
      });
    if (!(await loadLaboratory(tx))) await insertLaboratory(tx, { ...laboratory, isDemo: false });
    const { id } = await insertPerson(tx, {
      name,
      email,
      passwordHash: await hashPassword(password),
      customerId: null,
      roles: ["quality-manager"],
    });
    return {
      value: { id },
      events: [
        eventOf(staffEvents.laboratoryFounded, "laboratory", { name: laboratory.name, isDemo: false }),
        eventOf(staffEvents.firstAccessUsed, id, {}),
        ...(await installProcedures(tx, now)),
      ],
    };
  },
});
