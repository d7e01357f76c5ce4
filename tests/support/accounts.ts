import { closeDatabase, configureDatabase } from "@/lib/data/client";
import { inScope } from "@/lib/data/in-scope";
import { configureSeal, sealKeyOf } from "@/lib/data/seal";
import type { AccountPolicy } from "@/lib/domain/account/policy";
import { type Refusal, Refused } from "@/lib/domain/refusal";
import { type Actor, ownAccountOf } from "@/lib/domain/staff/actor";
import type { Role } from "@/lib/domain/staff/roles";
import { recordCustomer } from "@/lib/operations/customer/record";
import { execute } from "@/lib/operations/execute";
import { foundLaboratory } from "@/lib/operations/laboratory/found";
import { addPerson } from "@/lib/operations/staff/add-person";
import { signIn } from "@/lib/operations/staff/sign-in";
import { actorView } from "@/lib/views/actor";
import { testDatabase } from "./database";

export const publicUrl = "https://calibration.example";
export const password = "warm each tip first";
export const system: Actor = { kind: "system", name: "test" };
export const laboratoryScope = { kind: "laboratory" } as const;

/** Invented people in a laboratory of their own, and a clock that is moved by hand. */
export const openAccounts = async () => {
  const database = await testDatabase();
  configureDatabase(database.runtimeUrl);
  configureSeal(sealKeyOf("only for tests, of no installation at all"));
  let moment = Date.parse("2026-03-04T08:00:00Z");
  const clock = () => new Date(moment);
  await execute(
    foundLaboratory,
    system,
    {
      name: "Invented Calibration",
      addressLines: "1 Lane",
      contact: "+00 000",
      accreditationText: "",
      accreditationNumber: "",
      countryCode: "GB",
      performerMaySignOff: false,
      isDemo: false,
    },
    clock,
  );
  const person = async (name: string, roles: readonly Role[], customerId: string | null = null) => {
    const email = `${name}@example.test`;
    const input = { name, email, roles: [...roles] as never[], customerId, password };
    const { id } = await execute(addPerson, system, input, clock);
    return { id, email, name };
  };
  const enter = (email: string, typed = password, atBench = false) =>
    signIn({ email, password: typed, atBench, device: "a test" }, clock, publicUrl);
  /** A session that is open, and how to ask whether it still is. */
  const session = async (email: string, typed = password, atBench = false) => {
    const answer = await enter(email, typed, atBench);
    if (answer.kind !== "welcome") throw new Error(`not welcome: ${answer.kind}`);
    const still = async () => (await actorView(answer, clock()))?.actor ?? null;
    const account = async () => ownAccountOf((await still()) ?? { personId: answer.personId, name: "" });
    return { ...answer, still, account };
  };
  return {
    ...{ database, clock, person, enter, session },
    wait: (seconds: number) => {
      moment += seconds * 1000;
    },
    customer: (name: string) =>
      execute(
        recordCustomer,
        system,
        { name, addressLines: "1 Lane", contactName: "Lee", email: "lee@north.test" },
        clock,
      ),
    policy: (policy: Partial<AccountPolicy>) =>
      inScope(laboratoryScope, (tx) =>
        tx.laboratory.update({
          where: { id: "laboratory" },
          data: { accountPolicy: JSON.stringify(policy), version: { increment: 1 } },
        }),
      ),
    mails: (kind: string) =>
      inScope(laboratoryScope, (tx) =>
        tx.mailMessage.findMany({ where: { kind }, orderBy: [{ enqueuedAt: "asc" }, { id: "asc" }] }),
      ),
    events: (action: string) =>
      inScope(laboratoryScope, (tx) =>
        tx.auditEvent.findMany({ where: { action }, orderBy: { sequence: "asc" } }),
      ),
    close: async () => {
      await closeDatabase();
      await database.drop();
    },
  };
};

export type Accounts = Awaited<ReturnType<typeof openAccounts>>;

export const refusal = (work: Promise<unknown>): Promise<Refusal | "answered"> =>
  work.then(
    () => "answered" as const,
    (error) => {
      if (error instanceof Refused) return error.refusal;
      throw error;
    },
  );

export const tokenIn = (body: string, place: string): string =>
  new RegExp(`/${place}/([\\w-]{43})`).exec(body)?.[1] ?? "";
