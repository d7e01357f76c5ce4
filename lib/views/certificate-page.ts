import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { loadPeopleNames } from "@/lib/data/review/load-people-names";
import { describeEvent } from "@/lib/domain/audit/describe";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { type Actor, actorIdOf } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { traceCertificate } from "@/lib/domain/trace/trace-certificate";
import { answer, found } from "./view";

const isPersonId = (id: string): boolean => !id.startsWith("system:") && id !== "";

/** What happened to it, as sentences, the latest first. */
const historyOf = async (tx: Tx, certificateId: string) => {
  const events = await tx.auditEvent.findMany({
    where: { entityKind: "certificate", entityId: certificateId },
    orderBy: { sequence: "desc" },
    take: 50,
  });
  const names = await loadPeopleNames(tx, events.map(({ actorId }) => actorId).filter(isPersonId));
  return events.map((event) => ({
    key: String(event.sequence),
    at: new Date(Number(event.atMicroseconds / 1000n)).toISOString(),
    ...describeEvent(event, (id) => names.get(id)),
  }));
};

/** Whether the performer's sign-off still waits for somebody else's second look. */
const secondLookOf = async (tx: Tx, runId: string, sensorId: string) => {
  const decisions = await tx.reviewDecision.findMany({ where: { runId, sensorId }, orderBy: { id: "asc" } });
  const exception = decisions.find(
    ({ decision, exceptionReason }) => decision === "signed-off" && exceptionReason !== null,
  );
  if (!exception) return null;
  const look = decisions.find(({ decision }) => decision === "second-look");
  const names = await loadPeopleNames(tx, look ? [look.decidedById] : []);
  return {
    reason: exception.exceptionReason ?? "",
    look: look
      ? { by: names.get(look.decidedById) ?? "", at: look.decidedAt.toISOString(), finding: look.reason }
      : null,
  };
};

export const certificatePageView = (actor: Actor, number: string) =>
  answer(actor, "certificate.read", async (tx) => {
    const row = found(
      await tx.certificate.findUnique({
        where: { number },
        include: {
          files: {
            select: { sha256: true, renderedAt: true, rendererVersion: true },
            orderBy: { renderedAt: "asc" },
          },
        },
      }),
    );
    const content = CertificateContent.parse(JSON.parse(row.content));
    const file = row.files[0];
    return {
      id: row.id,
      content,
      contentHash: hex(row.contentHash),
      href: `/api/certificates/${row.token}`,
      signedAt: row.signedAt.toISOString(),
      file: file
        ? {
            sha256: hex(file.sha256),
            renderedAt: file.renderedAt.toISOString(),
            renderer: file.rendererVersion,
          }
        : null,
      standards: traceCertificate(content).map(({ standard, role, route, standing }) => ({
        ...standard,
        roleLabel: role,
        routeLabel: route,
        standing,
      })),
      secondLook: await secondLookOf(tx, row.runId, row.sensorId),
      mayLook:
        actor.kind === "staff" &&
        may(actor.roles, "review.second-look") &&
        actorIdOf(actor) !== row.signedById,
      history: await historyOf(tx, row.id),
    };
  });

export type CertificatePage = Awaited<ReturnType<typeof certificatePageView>>;
