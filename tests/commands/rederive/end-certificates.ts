import { loadAmended } from "@/lib/data/amendment/load-amended";
import { hex } from "@/lib/data/hex";
import { inScope, type Tx } from "@/lib/data/in-scope";
import { sha256 } from "@/lib/data/sha256";
import { contentHash } from "@/lib/domain/certificate/content-hash";
import { demand } from "@/lib/domain/refusal";
import type { Role } from "@/lib/domain/staff/roles";
import { askAmendment } from "@/lib/operations/certificate/ask-amendment";
import { signOffAmendment } from "@/lib/operations/certificate/sign-off-amendment";
import { withdrawCertificate } from "@/lib/operations/certificate/withdraw";
import { execute } from "@/lib/operations/execute";
import { newSecret } from "@/lib/operations/one-time-code";
import { demoPassword } from "@/prisma/seed/people";
import { signatoryAt } from "@/prisma/seed/signing";

const inLaboratory = <T>(work: (tx: Tx) => Promise<T>) => inScope({ kind: "laboratory" }, work);

const staffAs = (role: Role) =>
  inLaboratory(async (tx) => {
    const { personId } = await tx.personRole.findFirstOrThrow({ where: { role } });
    const { name } = await tx.person.findUniqueOrThrow({ where: { id: personId } });
    return { kind: "staff", personId, name, roles: [role] } as const;
  });

const certificateNo = (last: string) =>
  inLaboratory((tx) => tx.certificate.findFirstOrThrow({ where: { number: { endsWith: last } } }));

const hashShown = (amendmentId: string, certificate: Awaited<ReturnType<typeof certificateNo>>) =>
  inLaboratory(async (tx) => {
    const amendment = await tx.amendment.findUniqueOrThrow({ where: { id: amendmentId } });
    const amended = demand(await loadAmended(tx, certificate, amendment));
    return hex(contentHash(demand(amended.compose(null)), sha256));
  });

/** Two certificates of the demonstration end by what people do: one is amended, one is withdrawn. */
export const endCertificates = async (): Promise<void> => {
  const now = new Date();
  const clock = () => now;
  const manager = await staffAs("quality-manager");
  const old = await certificateNo("-0002");
  const { id: amendmentId } = await execute(
    askAmendment,
    manager,
    {
      ...{ certificateId: old.id, kind: "amendment" as const, reason: "the order was misread (invented)" },
      corrections: { remark: "The purchase order was misread (invented)." },
    },
    clock,
  );
  const signatory = await staffAs("signatory");
  const { actor, act } = await signatoryAt(signatory, demoPassword, newSecret(), now);
  const reviewedHash = await hashShown(amendmentId, old);
  await execute(signOffAmendment, actor, { amendmentId, reviewedHash, act }, clock);
  const { id: certificateId } = await certificateNo("-0003");
  const withdrawn = { certificateId, reason: "a wrong sensor (invented)", forGood: true as const };
  await execute(withdrawCertificate, manager, withdrawn, clock);
};
