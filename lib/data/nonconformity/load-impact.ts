import { CertificateContent } from "@/lib/domain/certificate/content";
import type { EntryFigures } from "@/lib/domain/nonconformity/figures";
import { assessImpact, worstImpact } from "@/lib/domain/nonconformity/impact";
import type { SubjectKind } from "@/lib/domain/nonconformity/labels";
import { NodeFacts } from "@/lib/domain/trace/chain";
import { certificatesOfRuns } from "../certificate/certificates-of-runs";
import { loadRunsOn } from "../equipment/runs-on";
import type { Tx } from "../in-scope";
import { certificatesOfSensors } from "../parts/certificates-of-sensors";
import { resultsStandingOn } from "../sql/results-standing-on";

type Window = { readonly from: string; readonly until: string; readonly deltaCelsius: number | null };

/** Of a standard with these calibrations: every certificate whose frozen chain reaches it, through other standards too. */
const certificatesOn = async (
  tx: Tx,
  equipmentId: string,
  calibrationIds: readonly string[],
): Promise<readonly string[]> => {
  const records = calibrationIds.map((id) => `${equipmentId}/${id}`);
  const rows = await resultsStandingOn(tx, "standard", records, { limit: 100_000, offset: 0 });
  return rows.flatMap(({ facts }) => NodeFacts.parse(JSON.parse(facts)).certificate ?? []);
};

const ofEquipment = async (tx: Tx, id: string, from: string) => {
  const calibrations = await tx.calibration.findMany({ where: { equipmentId: id }, select: { id: true } });
  const numbers = await certificatesOn(tx, id, [...calibrations.map((one) => one.id), "none"]);
  // A furnace stands in no chain of calibrations; what was measured in it is known by its runs.
  const runs = await loadRunsOn(tx, id, from || null);
  const ids = await runIds(
    tx,
    runs.map(({ number }) => number),
  );
  const inRuns = await tx.certificate.findMany({
    where: {
      id: { in: await certificatesOfRuns(tx, ids) },
    },
    select: { number: true },
  });
  const waiting = runs.filter(({ state }) => state !== "signed-off").map(({ number }) => number);
  return { numbers: [...numbers, ...inRuns.map(({ number }) => number)], runs: waiting };
};

const runIds = async (tx: Tx, numbers: readonly string[]): Promise<string[]> =>
  (await tx.run.findMany({ where: { number: { in: [...numbers] } }, select: { id: true } })).map(
    ({ id }) => id,
  );

const ofCalibration = async (tx: Tx, id: string, from: string) => {
  const { equipmentId } = await tx.calibration.findUniqueOrThrow({
    where: { id },
    select: { equipmentId: true },
  });
  const { runs } = await ofEquipment(tx, equipmentId, from);
  return { numbers: await certificatesOn(tx, equipmentId, [id]), runs };
};

/** What one customer's thing, or a run, has on paper already. */
const ofWork = async (tx: Tx, kind: SubjectKind, id: string) => {
  if (kind === "sensor")
    return { numbers: (await certificatesOfSensors(tx, [id])).map(({ number }) => number), runs: [] };
  const where =
    kind === "run"
      ? { id: { in: await certificatesOfRuns(tx, [id]) } }
      : { order: { orderId: id }, certificate: { id }, customer: { customerId: id } }[
          kind as "order" | "certificate" | "customer"
        ];
  const rows = await tx.certificate.findMany({ where, select: { number: true } });
  return { numbers: rows.map(({ number }) => number), runs: [] };
};

const reach = (tx: Tx, kind: SubjectKind, id: string | null, from: string) => {
  if (id === null || kind === "laboratory") return { numbers: [], runs: [] };
  if (kind === "equipment") return ofEquipment(tx, id, from);
  return kind === "calibration" ? ofCalibration(tx, id, from) : ofWork(tx, kind, id);
};

/** A day outside the window is not concerned; an open end is. */
const isWithin = ({ performedFrom, performedTo }: CertificateContent, { from, until }: Window): boolean =>
  (from === "" || performedTo >= from) && (until === "" || performedFrom <= until);

const assess = (content: CertificateContent, deltaCelsius: number | null) => {
  const plots = content.rows.flatMap(({ plot }) => plot ?? []);
  const ratios =
    deltaCelsius === null ? [] : plots.map((plot) => Math.abs(deltaCelsius) / plot.expandedCelsius);
  return {
    results: plots.length,
    largestRatio: ratios.length === 0 ? null : Math.max(...ratios),
    impact: worstImpact(plots.map((plot) => assessImpact(plot, deltaCelsius))),
  };
};

/** ISO/IEC 17025 6.4.9, 7.10.1 c: what stands on the subject, each certificate with what the change means for it. */
export const loadImpact = async (
  tx: Tx,
  subject: { readonly kind: SubjectKind; readonly id: string | null },
  window: Window,
): Promise<EntryFigures> => {
  const { numbers, runs } = await reach(tx, subject.kind, subject.id, window.from);
  const rows = await tx.certificate.findMany({
    where: { number: { in: [...new Set(numbers)] } },
    select: { number: true, customerId: true, content: true },
    orderBy: { signedAt: "desc" },
  });
  const certificates = rows.flatMap(({ number, customerId, content: stored }) => {
    const content = CertificateContent.parse(JSON.parse(stored));
    if (!isWithin(content, window)) return [];
    return [
      { number, customerId, orderNumber: content.order.number, ...assess(content, window.deltaCelsius) },
    ];
  });
  return { ...window, certificates, runs: [...runs] };
};
