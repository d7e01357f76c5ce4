import { whereaboutsOf } from "@/lib/data/custody/whereabouts-of";
import { loadProvider } from "@/lib/data/provider/provider-store";
import { loadReportFile, loadReports, type ProviderReport } from "@/lib/data/provider/report-store";
import { loadPeopleNames } from "@/lib/data/review/load-people-names";
import { measuredBy, reportLines } from "@/lib/domain/provider/measured-by";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

const shown = (report: ProviderReport, names: ReadonlyMap<string, string>, counts: boolean) => ({
  id: report.id,
  certificate: report.certificate,
  issuedOn: report.issuedOn,
  accreditation: report.accreditation,
  provider: report.providerName,
  correction: report.correction,
  lines: reportLines(report.results),
  recordedBy: names.get(report.recordedById) ?? "",
  recordedAt: report.recordedAt.toISOString(),
  standing: report.standing,
  /** Of two that were accepted the later. */
  counts,
  decided: report.decided && {
    by: names.get(report.decided.decidedById) ?? "",
    at: report.decided.decidedAt.toISOString(),
    reason: report.decided.reason,
  },
});

/** Of a sensor of a subcontracted line: whom it goes to, where it is, and what was recorded of it. */
export const providerReportsView = (actor: Actor, tag: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const sensor = found(
      await tx.sensor.findUnique({
        where: { tag },
        include: { line: { include: { setpoints: { orderBy: { celsius: "asc" } }, order: true } } },
      }),
    );
    const { providerId, order } = sensor.line;
    const provider = providerId ? await loadProvider(tx, providerId) : null;
    const reports = await loadReports(tx, [sensor.id]);
    const names = await loadPeopleNames(
      tx,
      reports.flatMap(({ recordedById, decided }) => [recordedById, decided?.decidedById ?? []].flat()),
    );
    const counted = reports.findLast(({ standing }) => standing === "accepted");
    const waiting = reports.find(({ standing }) => standing === null);
    const isStaff = actor.kind === "staff";
    return {
      tag,
      order: order.number,
      provider: provider && { id: provider.id, name: provider.name, accreditation: provider.accreditation },
      measuredBy: counted ? measuredBy(counted.providerName) : null,
      isAway: (await whereaboutsOf(tx, [sensor.id])).get(sensor.id)?.kind === "to-provider",
      unit: sensor.line.temperatureUnit === "F" ? "°F" : "°C",
      setpoints: sensor.line.setpoints.map(({ typed, celsius }) => ({ typed, celsius })),
      reports: reports.map((report) => shown(report, names, report === counted)),
      waitingId: waiting?.id ?? null,
      mayMove: isStaff && may(actor.roles, "custody.record") && sensor.state !== "collected",
      mayRecord:
        isStaff && may(actor.roles, "provider-report.record") && provider !== null && waiting === undefined,
      mayDecide:
        isStaff && may(actor.roles, "provider-report.decide") && waiting?.recordedById !== actor.personId,
    };
  });

export type ProviderReports = Awaited<ReturnType<typeof providerReportsView>>;

/** The provider's certificate as it came: to staff, and, once it counts, to the customer whose sensor it is of. */
export const providerReportFileView = (actor: Actor, id: string) =>
  answer(actor, actor.kind === "customer" ? "portal.read" : "laboratory.read", async (tx) =>
    found(await loadReportFile(tx, id)),
  );
