import type { Tx } from "@/lib/data/in-scope";
import { isUuid } from "@/lib/data/is-uuid";
import { sha256 } from "@/lib/data/sha256";
import { isoDay } from "@/lib/domain/calibration/due";
import type { ReportDecision } from "@/lib/domain/provider/decide-report";
import { type ReportResults, readReportResults } from "@/lib/domain/provider/report-results";

type NewReport = {
  readonly sensor: { readonly id: string; readonly customerId: string };
  readonly provider: { readonly id: string; readonly name: string };
  readonly sequence: number;
  readonly certificate: string;
  readonly issuedOn: string;
  readonly accreditation: string;
  readonly results: ReportResults;
  readonly correction: string;
  readonly document: { readonly fileName: string; readonly bytes: Uint8Array };
  readonly recordedById: string;
  readonly recordedAt: Date;
};

export const insertReport = async (tx: Tx, report: NewReport): Promise<string> => {
  const { sensor, provider, document, results, issuedOn, ...rest } = report;
  const { id } = await tx.providerReport.create({
    data: {
      ...rest,
      sensorId: sensor.id,
      customerId: sensor.customerId,
      providerId: provider.id,
      providerName: provider.name,
      issuedOn: new Date(`${issuedOn}T00:00:00Z`),
      results: JSON.stringify(results),
      fileName: document.fileName,
      mediaType: "application/pdf",
      bytes: new Uint8Array(document.bytes),
      sha256: sha256(document.bytes),
    },
    select: { id: true },
  });
  return id;
};

export const insertReportDecision = async (
  tx: Tx,
  report: { readonly id: string; readonly customerId: string },
  decision: {
    readonly decision: "accepted" | "rejected";
    readonly reason: string;
    readonly decidedById: string;
    readonly decidedAt: Date;
  },
): Promise<void> => {
  await tx.providerReportDecision.create({
    data: { ...decision, reportId: report.id, customerId: report.customerId },
  });
};

/** What was recorded of these sensors, the oldest first, without the files. A customer's scope shows what was accepted. */
export const loadReports = async (tx: Tx, sensorIds: readonly string[]) => {
  const rows = await tx.providerReport.findMany({
    where: { sensorId: { in: [...sensorIds] } },
    omit: { bytes: true, sha256: true },
    orderBy: [{ sensorId: "asc" }, { sequence: "asc" }],
  });
  const decisions = await tx.providerReportDecision.findMany({
    where: { reportId: { in: rows.map(({ id }) => id) } },
  });
  return rows.map((row) => {
    const decided = decisions.find(({ reportId }) => reportId === row.id) ?? null;
    return {
      ...row,
      issuedOn: isoDay(row.issuedOn),
      results: readReportResults(row.results),
      standing: (decided?.decision ?? null) as ReportDecision,
      decided,
    };
  });
};

export type ProviderReport = Awaited<ReturnType<typeof loadReports>>[number];

/**
 * Of each sensor the record that counts: the last one accepted. Why it was recorded once more is told only where an earlier
 * one counted: what nobody was ever shown has no place that another could take.
 */
export const countedReports = async (
  tx: Tx,
  sensorIds: readonly string[],
): Promise<ReadonlyMap<string, ProviderReport>> =>
  new Map(
    (await loadReports(tx, sensorIds))
      .filter(({ standing }) => standing === "accepted")
      .map((report, index, all) => [
        report.sensorId,
        all[index - 1]?.sensorId === report.sensorId ? report : { ...report, correction: "" },
      ]),
  );

/** The provider's certificate as it came; null where it is not here. */
export const loadReportFile = async (tx: Tx, id: string) =>
  isUuid(id)
    ? tx.providerReport.findUnique({
        where: { id },
        select: { bytes: true, mediaType: true, certificate: true },
      })
    : null;
