import { isoDay } from "@/lib/domain/calibration/due";
import { NodeFacts } from "@/lib/domain/trace/chain";
import type { TraceCalibration, TraceInHouseResult, TraceParent } from "@/lib/domain/trace/trace-parts";
import { hex } from "../hex";
import type { Tx } from "../in-scope";

const dayOrNull = (moment: Date | null): string | null => (moment ? isoDay(moment) : null);

type ParentRow = Awaited<ReturnType<Tx["calibrationParent"]["findMany"]>>[number];

const parentOf = (row: ParentRow): TraceParent => ({
  id: row.id,
  position: row.position,
  kind: row.kind as TraceParent["kind"],
  title: row.title,
  identity: row.identity,
  issuer: row.issuer,
  certificate: row.certificate,
  route: row.route,
  performedOn: dayOrNull(row.performedOn),
  validUntil: dayOrNull(row.validUntil),
  expanded: row.expanded,
  unit: row.unit,
  coverageFactor: row.coverageFactor,
  below: row.below,
});

/** The results of our own certificates, frozen with them, by the certificate's number. */
const loadInHouse = async (
  tx: Tx,
  certificateIds: readonly string[],
): Promise<ReadonlyMap<string, { certificate: string; results: readonly TraceInHouseResult[] }>> => {
  if (certificateIds.length === 0) return new Map();
  const certificates = await tx.certificate.findMany({
    where: { id: { in: [...certificateIds] } },
    select: { id: true, number: true, evaluationId: true, sensorId: true },
  });
  const rows = await tx.result.findMany({
    where: {
      OR: certificates.map(({ evaluationId, sensorId }) => ({ evaluationId, sensorId, state: "measured" })),
    },
    select: { id: true, evaluationId: true, sensorId: true },
  });
  const nodes = await tx.traceNode.findMany({
    where: { kind: "result", recordId: { in: rows.map(({ id }) => id) } },
  });
  return new Map(
    certificates.map((certificate) => {
      const own = rows.filter(
        (row) => row.evaluationId === certificate.evaluationId && row.sensorId === certificate.sensorId,
      );
      const results = nodes
        .filter((node) => own.some(({ id }) => id === node.recordId))
        .map((node) => {
          const facts = NodeFacts.parse(JSON.parse(node.facts));
          return {
            recordId: node.recordId,
            height: node.height,
            celsius: facts.celsius ?? 0,
            expandedCelsius: Number((facts.expandedCelsius ?? "").replaceAll(/[^0-9.]/g, "")),
            coverageFactor: Number(facts.coverageFactor ?? "2"),
          };
        })
        .sort((a, b) => a.celsius - b.celsius);
      return [certificate.id, { certificate: certificate.number, results }];
    }),
  );
};

/** Calibrations with all that their certificates name behind themselves, by id. */
export const loadTraceCalibrations = async (
  tx: Tx,
  ids: readonly string[],
): Promise<ReadonlyMap<string, TraceCalibration & { readonly inHouseCertificateId: string | null }>> => {
  const rows = await tx.calibration.findMany({
    where: { id: { in: [...ids] } },
    include: { parents: { orderBy: { position: "asc" } } },
  });
  const documents = await tx.evidenceDocument.findMany({
    where: { id: { in: rows.flatMap(({ documentId }) => documentId ?? []) } },
    select: { id: true, sha256: true },
  });
  const inHouse = await loadInHouse(
    tx,
    rows.flatMap(({ inHouseCertificateId }) => inHouseCertificateId ?? []),
  );
  return new Map(
    rows.map((row) => {
      const document = documents.find(({ id }) => id === row.documentId);
      return [
        row.id,
        {
          id: row.id,
          certificate: row.certificate,
          issuer: row.issuer,
          accreditation: row.accreditation,
          route: row.route,
          performedOn: isoDay(row.performedOn),
          dueOn: isoDay(row.dueOn),
          findings: JSON.parse(row.findings),
          statement: row.traceabilityStatement,
          documentSha256: document ? hex(document.sha256) : null,
          parents: row.parents.map(parentOf),
          inHouse: row.inHouseCertificateId ? (inHouse.get(row.inHouseCertificateId) ?? null) : null,
          inHouseCertificateId: row.inHouseCertificateId,
        },
      ];
    }),
  );
};
