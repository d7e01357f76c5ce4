import { acceptanceOf, acceptedInForce } from "@/lib/domain/calibration/acceptance";
import { calibratedRange } from "@/lib/domain/calibration/calibrated-range";
import { isCalibrationOf, readCalibration } from "@/lib/domain/calibration/read-calibration";
import type { Calibration } from "@/lib/domain/calibration/types";
import { isEquipmentOf, readEquipment } from "@/lib/domain/equipment/read-equipment";
import type { ServicePolicy } from "@/lib/domain/equipment/service-policy";
import { serviceFindings } from "@/lib/domain/equipment/service-problem";
import { serviceStanding } from "@/lib/domain/equipment/service-standing";
import type { CalibratedKind, Equipment } from "@/lib/domain/equipment/types";
import { isApprovedFor } from "@/lib/domain/provider/is-approved-for";
import type { Provider } from "@/lib/domain/provider/types";
import type { EquipmentCandidate, ReferenceCandidate } from "@/lib/domain/run/load-candidates";
import { readEntry } from "../equipment/logbook-store";
import { loadServicePolicy } from "../equipment/service-policy-store";
import type { Tx } from "../in-scope";
import { loadProviders } from "../provider/provider-store";

export type Standard<K extends CalibratedKind> = {
  readonly equipment: Equipment<K>;
  /** In force on the day, accepted by the moment; null where none is. */
  readonly calibration: Calibration<K> | null;
  /** Whether it may be chosen now. */
  readonly use: Pick<EquipmentCandidate, "calibration" | "waiting" | "service">;
  readonly range: ReferenceCandidate["range"];
};

/** A run asks with its day and the moment it was made: nothing accepted or rejected later changes what it stands on. */
type AsOf = { readonly day: string; readonly moment: Date };

const loadRows = (tx: Tx, which: { readonly ids?: readonly string[]; readonly tags?: readonly string[] }) =>
  tx.equipment.findMany({
    where: { OR: [{ id: { in: [...(which.ids ?? [])] } }, { tag: { in: [...(which.tags ?? [])] } }] },
    include: {
      entries: { orderBy: { id: "asc" } },
      calibrations: {
        orderBy: [{ performedOn: "asc" }, { recordedAt: "asc" }],
        include: { decisions: { orderBy: { id: "asc" } } },
      },
    },
  });
type Row = Awaited<ReturnType<typeof loadRows>>[number];
type CalibrationRow = Row["calibrations"][number];

const isIssuerApproved = (row: CalibrationRow, kind: string, providers: readonly Provider[]): boolean => {
  if (row.route === "in-house") return true;
  // Certificates from before providers were kept name theirs only.
  const issuer = providers.find(({ id, name }) =>
    row.providerId ? id === row.providerId : name === row.issuer,
  );
  return isApprovedFor(issuer ?? null, kind, readCalibration(row).performedOn);
};

const standardOf = (
  { calibrations, entries, ...row }: Row,
  asOf: AsOf,
  { providers, policy }: { readonly providers: readonly Provider[]; readonly policy: ServicePolicy },
) => {
  const equipment = readEquipment(row);
  const all = calibrations.map((one) => ({ ...readCalibration(one), decisions: one.decisions, row: one }));
  const inForce = acceptedInForce(all, asOf);
  const waiting = all.findLast(
    ({ decisions, performedOn }) => acceptanceOf(decisions) === "waiting" && performedOn <= asOf.day,
  );
  return {
    equipment,
    calibration: inForce,
    use: {
      calibration: inForce && {
        certificate: inForce.certificate,
        performedOn: inForce.performedOn,
        dueOn: inForce.dueOn,
        issuer: inForce.issuer,
        isIssuerApproved: isIssuerApproved(inForce.row, row.kind, providers),
        isRejected: acceptanceOf(inForce.decisions) === "rejected",
      },
      waiting: waiting?.certificate ?? null,
      service: serviceFindings(
        {
          ...equipment,
          standing: serviceStanding(equipment, entries.map(readEntry), inForce?.performedOn ?? null),
        },
        policy,
        asOf.day,
      ),
    },
    range: inForce && calibratedRange(inForce.findings, inForce.row),
  };
};

/** Equipment by id or by tag, each with the calibration that counted on a day, as far as it was accepted by a moment. */
export const loadStandards = async (
  tx: Tx,
  which: { readonly ids?: readonly string[]; readonly tags?: readonly string[] },
  asOf: AsOf,
) => {
  const providers = await loadProviders(tx);
  const { policy } = await loadServicePolicy(tx);
  const all = (await loadRows(tx, which)).map((row) => standardOf(row, asOf, { providers, policy }));
  const of = <K extends CalibratedKind>(
    kind: K,
    named: (equipment: Equipment) => boolean,
  ): Standard<K> | null => {
    const found = all.find(({ equipment }) => named(equipment) && isEquipmentOf(equipment, kind));
    if (!found) return null;
    const { equipment, calibration, use, range } = found;
    return {
      equipment: equipment as Equipment<K>,
      calibration:
        calibration && isCalibrationOf(calibration, kind) ? (calibration as unknown as Calibration<K>) : null,
      use,
      range,
    };
  };
  return {
    byId: <K extends CalibratedKind>(kind: K, id: string) => of(kind, (equipment) => equipment.id === id),
    byTag: <K extends CalibratedKind>(kind: K, tag: string) => of(kind, (equipment) => equipment.tag === tag),
  };
};
