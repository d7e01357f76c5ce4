import { loadStanding } from "@/lib/data/certificate/standing";
import { hex } from "@/lib/data/hex";
import type { Tx } from "@/lib/data/in-scope";
import { loadPeopleNames } from "@/lib/data/review/load-people-names";
import { decideStands } from "@/lib/domain/amendment/decide-amendment";
import { describeEvent } from "@/lib/domain/audit/describe";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { type IssueStepName, issueStepLabels } from "@/lib/domain/certificate/issue-step";
import { mediaTypes } from "@/lib/domain/certificate/media-types";
import { asRunState, type RunState } from "@/lib/domain/run/states";
import { type Actor, actorIdOf } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { traceCertificate } from "@/lib/domain/trace/trace-certificate";
import { askedOf } from "./certificate-asked";
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

/** What was on the signatory's screen, by its hash; the content has a number, a day and a name more. Null: signed before signatures were kept. */
const signatureOf = async (tx: Tx, certificateId: string) => {
  const row = await tx.signature.findUnique({ where: { certificateId }, select: { reviewedHash: true } });
  return row ? { reviewedHash: hex(row.reviewedHash) } : null;
};

/** Steps that did not succeed, the latest first. */
const attemptsOf = async (tx: Tx, certificateId: string) => {
  const rows = await tx.certificateAttempt.findMany({
    where: { certificateId },
    orderBy: { id: "desc" },
    take: 20,
  });
  return rows.map(({ id, step, detail, happenedAt }) => ({
    key: String(id),
    step: issueStepLabels[step as IssueStepName],
    detail,
    at: happenedAt.toISOString(),
  }));
};

const runStateOf = async (tx: Tx, id: string): Promise<RunState> =>
  asRunState((await tx.run.findUniqueOrThrow({ where: { id }, select: { state: true } })).state);

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
            select: {
              ...{ sha256: true, renderedAt: true, rendererVersion: true },
              ...{ mediaType: true, sealFingerprint: true },
            },
            orderBy: { renderedAt: "asc" },
          },
        },
      }),
    );
    const content = CertificateContent.parse(JSON.parse(row.content));
    const file = row.files.find(({ mediaType }) => mediaType === mediaTypes.pdf);
    const standing = await loadStanding(tx, row.id);
    const isStaff = actor.kind === "staff";
    const attempts = standing.kind === "pending" ? await attemptsOf(tx, row.id) : [];
    const stands = decideStands(number, standing, attempts.length).ok;
    return {
      standing,
      attempts,
      asked: await askedOf(tx, actor, row),
      mayAmend: isStaff && stands && may(actor.roles, "certificate.amend"),
      mayWithdraw: isStaff && stands && may(actor.roles, "certificate.withdraw"),
      mayEvaluate: isStaff && may(actor.roles, "run.perform"),
      runState: await runStateOf(tx, row.runId),
      id: row.id,
      content,
      contentHash: hex(row.contentHash),
      href: `/api/certificates/${row.token}`,
      signedAt: row.signedAt.toISOString(),
      hasDcc: row.files.some(({ mediaType }) => mediaType === mediaTypes.dcc),
      file: file
        ? {
            sha256: hex(file.sha256),
            renderedAt: file.renderedAt.toISOString(),
            renderer: file.rendererVersion,
            sealFingerprint: file.sealFingerprint,
          }
        : null,
      standards: traceCertificate(content).map(({ standard, role, route, standing }) => ({
        ...standard,
        roleLabel: role,
        routeLabel: route,
        standing,
      })),
      signature: await signatureOf(tx, row.id),
      secondLook: await secondLookOf(tx, row.runId, row.sensorId),
      mayLook:
        actor.kind === "staff" &&
        may(actor.roles, "review.second-look") &&
        actorIdOf(actor) !== row.signedById,
      history: await historyOf(tx, row.id),
    };
  });

export type CertificatePage = Awaited<ReturnType<typeof certificatePageView>>;
