import { createHash } from "node:crypto";
import { insertFactor } from "@/lib/data/account/second-factor-store";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { configureSeal, sealKeyOf } from "@/lib/data/seal";
import { codeAt, stepOf } from "@/lib/operations/one-time-code";

/** Of "warm each tip first" by argon2id at the lowest cost it knows, so that a test of a signature costs no time. */
export const cheapHash =
  "$argon2id$v=19$m=8,t=1,p=1$yTN0Wz1uXPSs8tA+mCicUA$mplfGH/NUGwKwKCCtQGYreslz7+YZyFXq3XzaaVALwY";
export const signingPassword = "warm each tip first";

/** Everybody in the tests signs on this day. */
const day = "2026-03-05";
const opened = new Date(`${day}T09:55:00Z`);

/** Of each person another one, the same in every run. */
export const secretOf = (personId: string): Uint8Array =>
  createHash("sha1").update(`only for tests ${personId}`).digest();

export const codeOf = (personId: string, at: Date): string => codeAt(secretOf(personId), stepOf(at));

/** A sign-in of that day. */
export const personSessionRow = async (tx: Tx, personId: string, kind: "full" | "bench" = "full") => {
  const startedAt = new Date(`${day}T07:00:00Z`);
  const row = await tx.personSession.create({
    data: {
      ...{ personId, kind, cameBy: "password", hadCode: true, device: "a test" },
      ...{ startedAt, lastSeenAt: opened, endsAt: new Date(`${day}T19:00:00Z`) },
    },
  });
  return row.id;
};

export const secondFactorRow = async (tx: Tx, personId: string): Promise<void> => {
  configureSeal(sealKeyOf("only for tests, of no installation at all"));
  const id = crypto.randomUUID();
  await insertFactor(tx, { id, personId, secret: secretOf(personId) }, opened);
  await tx.secondFactor.update({ where: { id }, data: { confirmedAt: opened } });
};

type Changes = Partial<Parameters<Tx["authorisation"]["create"]>[0]["data"]>;

export const authorisationRow = (tx: Tx, personId: string, grantedById: string, changes: Changes = {}) =>
  tx.authorisation.create({
    data: {
      ...{ personId, grantedById, activity: "sign-off", typeLetters: "", scope: "any" },
      ...{ fromCelsius: -200, toCelsius: 1800, validFrom: new Date("2026-01-01"), basis: "invented" },
      grantedAt: new Date("2026-01-01T08:00:00Z"),
      ...(changes as object),
    },
  });

/** Has signed a few minutes ago in a session that is open: the password alone signs. Answers the sign-in's id. */
export const signatoryRows = async (tx: Tx, personId: string, grantedById: string): Promise<string> => {
  await tx.person.update({ where: { id: personId }, data: { passwordHash: cheapHash } });
  await secondFactorRow(tx, personId);
  await authorisationRow(tx, personId, grantedById);
  const personSessionId = await personSessionRow(tx, personId);
  await tx.signingSession.create({
    data: { personId, personSessionId, openedAt: opened, lastSignedAt: opened },
  });
  return personSessionId;
};

type Signed = Awaited<ReturnType<Tx["certificate"]["create"]>>;

/** A certificate made past the sign-off gets its signature in the same transaction, or is not kept. */
export const signatureRow = async (tx: Tx, certificate: Signed, grantedById: string): Promise<void> => {
  const { id: certificateId, customerId, contentHash, signedById: personId, signedAt } = certificate;
  const { id: authorisationId } = await authorisationRow(tx, personId, grantedById);
  const personSessionId = await personSessionRow(tx, personId);
  const session = { personId, personSessionId, openedAt: signedAt, lastSignedAt: signedAt };
  const { id: signingSessionId } = await tx.signingSession.create({ data: session });
  await tx.signature.create({
    data: {
      ...{ certificateId, customerId, personId, contentHash, reviewedHash: contentHash, signedAt },
      ...{ printedName: "Invented", meaning: "reviewed-and-authorised", means: "password+code" },
      ...{ actId: crypto.randomUUID(), signingSessionId, authorisationId },
    },
  });
};

export const inLaboratory = <T>(work: (tx: Tx) => Promise<T>): Promise<T> =>
  inScope({ kind: "laboratory" }, work);
