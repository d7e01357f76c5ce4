import type { Actor } from "@/lib/domain/staff/actor";
import { signOff } from "@/lib/operations/certificate/sign-off";
import { execute } from "@/lib/operations/execute";
import { buildRun } from "./build-run";
import type { World } from "./build-world";
import { signOffInput } from "./sign-run";
import {
  authorisationRow,
  cheapHash,
  codeOf,
  inLaboratory,
  signingPassword as password,
  personSessionRow,
  secondFactorRow,
} from "./signatory";

export type Signer = Extract<Actor, { kind: "staff" }> & { readonly sessionId: string };
type Built = Awaited<ReturnType<typeof buildRun>>;
type RunOptions = Partial<Parameters<typeof buildRun>[1]>;
export type Typed = { readonly password?: string; readonly code?: string; readonly actId?: string };

/** Of the day everybody in the tests signs on. */
export const at = (time: string) => new Date(`2026-03-05T${time}Z`);

/** What a signer gives at the first signature of a session. */
export const both = (signer: Signer, when: Date) => ({ password, code: codeOf(signer.personId, when) });

/** What the form sends, signed by what is typed and nothing else. */
export const form = async (built: Built, typed: Typed) => {
  const input = await signOffInput(built);
  return { ...input, act: { actId: input.act.actId, password: "", code: "", ...typed } };
};

export const sign = (actor: Actor, input: Awaited<ReturnType<typeof form>>, when: Date) =>
  execute(signOff, actor, input, () => when);

export const signaturesOf = ({ personId }: Signer) =>
  inLaboratory((tx) => tx.signature.findMany({ where: { personId }, orderBy: { signedAt: "asc" } }));

export const failuresOf = ({ personId }: Signer) =>
  inLaboratory(async (tx) => {
    const { email } = await tx.person.findUniqueOrThrow({ where: { id: personId } });
    const failures = await tx.signInAttempt.count({ where: { email, succeeded: false } });
    const events = await tx.auditEvent.findMany({ where: { entityId: personId, action: "signing.refused" } });
    return { failures, reasons: events.map(({ payload }) => JSON.parse(payload).reason) };
  });

/** People of this world who sign, and runs for them. */
export const signersOf = (world: () => World) => {
  let count = 0;
  const newRun = (options: RunOptions = {}) => buildRun(world(), { owners: ["north"], ...options });
  return {
    newRun,
    /** Somebody who has signed in and not signed yet; `null`: without an authorisation. */
    newSigner: (authorised: object | null = {}): Promise<Signer> =>
      inLaboratory(async (tx) => {
        count += 1;
        const name = `Signer ${count}`;
        const person = { name, email: `signer.${count}@example.test`, passwordHash: cheapHash };
        const { id } = await tx.person.create({ data: person });
        await tx.personRole.create({ data: { personId: id, role: "signatory" } });
        await secondFactorRow(tx, id);
        if (authorised) await authorisationRow(tx, id, world().people.quality.personId, authorised);
        const sessionId = await personSessionRow(tx, id);
        return { kind: "staff", personId: id, name, roles: ["signatory"], session: "full", sessionId };
      }),
    /** One more run, signed by what is typed. */
    signNew: async (actor: Actor, typed: Typed, when: Date) =>
      sign(actor, await form(await newRun(), typed), when),
  };
};
