import { loadFurnaceProblem } from "@/lib/data/equipment/furnace-problem";
import { holdsOf } from "@/lib/data/hold/holds-of";
import type { Tx } from "@/lib/data/in-scope";
import { setStanding } from "@/lib/data/parts/set-standing";
import { loadCurrentRevisions } from "@/lib/data/procedure/procedure-store";
import { equipmentCandidate } from "@/lib/data/run/equipment-candidate";
import { loadStandards } from "@/lib/data/run/load-standards";
import { dueState, isoDay } from "@/lib/domain/calibration/due";
import { readBores } from "@/lib/domain/furnace/bores";
import { decisionState } from "@/lib/domain/furnace/decision-state";
import { type DecisionRuleKind, decisionRuleText } from "@/lib/domain/order/labels";
import { revisionName } from "@/lib/domain/procedure/types";
import { problemOfUse } from "@/lib/domain/run/equipment-problem";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "@/lib/views/view";

/** What is on hold, or goes to an external provider, is not offered. */
const loadWaiting = async (tx: Tx) => {
  const found = await tx.sensor.findMany({
    where: { state: "received", line: { providerId: null, order: { state: "accepted" } } },
    include: {
      line: {
        include: { setpoints: { orderBy: { celsius: "asc" } }, order: { include: { customer: true } } },
      },
    },
    orderBy: { tag: "asc" },
  });
  const holds = await holdsOf(
    tx,
    found.map(({ id }) => id),
  );
  const rows = found.filter(({ id }) => !holds.some(({ sensorId }) => sensorId === id));
  const standing = await setStanding(tx, rows);
  return rows.map(({ line, ...sensor }) => ({
    tag: sensor.tag,
    serial: sensor.serial,
    type: sensor.typeLetter,
    construction: sensor.construction,
    protection: sensor.protection,
    customer: line.order.customer.name,
    order: line.order.number,
    rule: `${decisionRuleText({ ...line.order, decisionRule: line.order.decisionRule as DecisionRuleKind })}, U with ${line.order.uncertaintyDigits} digit${line.order.uncertaintyDigits === 1 ? "" : "s"}`,
    setpointsCelsius: line.setpoints.map(({ celsius }) => celsius),
    /** null: it has to be annealed before it can be loaded. */
    nextSet: standing.get(sensor.id)?.next ?? null,
  }));
};

const loadConfigurations = async (tx: Tx, today: string) => {
  const rows = await tx.furnaceConfiguration.findMany({
    include: {
      furnace: true,
      characterisations: {
        where: { performedOn: { lte: new Date(`${today}T00:00:00Z`) } },
        orderBy: [{ performedOn: "desc" }, { recordedAt: "desc" }],
        include: { decisions: { orderBy: { id: "asc" } } },
      },
    },
    orderBy: [{ furnace: { tag: "asc" } }, { name: "asc" }],
  });
  // Once a furnace, however many configurations it has.
  const problems = new Map<string | null, string | null>();
  for (const equipmentId of new Set(rows.map(({ furnace }) => furnace.equipmentId)))
    problems.set(equipmentId, (await loadFurnaceProblem(tx, equipmentId, today))?.message ?? null);
  return rows.map((row) => {
    const last = row.characterisations.find(({ decisions }) => decisionState(decisions) === "accepted");
    return {
      id: row.id,
      label: `${row.furnace.tag}, ${row.name}`,
      places: row.places,
      immersionMillimetre: row.immersionMillimetre,
      configuration: row.kind as "bare-tube" | "equalising-block",
      boreMillimetre: row.furnace.boreMillimetre,
      lengthMillimetre: row.furnace.lengthMillimetre,
      bestImmersionMillimetre: row.furnace.bestImmersionMillimetre ?? undefined,
      bores: readBores(row.bores),
      due: dueState(last ? isoDay(last.validUntil) : null, today),
      /** Why its furnace cannot be used today; null = nothing. */
      problem: problems.get(row.furnace.equipmentId) ?? null,
    };
  });
};

const runKinds = ["reference", "voltmeter", "scanner", "junction", "lead"] as const;
type RunKind = (typeof runKinds)[number];

/** What a run can be made of today, and what it cannot be made of, with why. */
export const newRunView = (actor: Actor, now: Date) =>
  answer(actor, "run.perform", async (tx) => {
    const today = isoDay(now);
    const rows = await tx.equipment.findMany({
      where: { state: { not: "retired" }, kind: { in: [...runKinds] } },
      orderBy: { tag: "asc" },
    });
    const ids = rows.map(({ id }) => id);
    const standards = await loadStandards(tx, { ids }, { day: today, moment: now });
    const problemOf = (kind: RunKind, id: string) =>
      problemOfUse(equipmentCandidate(standards.byId(kind, id)), kind, today);
    const of = (kind: RunKind) =>
      rows.flatMap((row) => {
        const standard = standards.byId(kind, row.id);
        // What createRun would refuse is not offered: the same rule.
        if (!standard || problemOf(kind, row.id)) return [];
        const { equipment, calibration } = standard;
        return [
          {
            id: row.id,
            tag: row.tag,
            type:
              equipment.particulars.kind === "reference" || equipment.particulars.kind === "lead"
                ? equipment.particulars.type
                : null,
            celsius:
              equipment.particulars.kind === "junction"
                ? calibration?.findings.kind === "junction"
                  ? calibration.findings.celsius
                  : equipment.particulars.celsius
                : null,
            dueOn: calibration?.dueOn ?? null,
            due: dueState(calibration?.dueOn ?? null, today),
          },
        ];
      });
    return {
      waiting: await loadWaiting(tx),
      procedures: (await loadCurrentRevisions(tx)).map((one) => ({ key: one.key, name: revisionName(one) })),
      configurations: await loadConfigurations(tx, today),
      references: of("reference"),
      voltmeters: of("voltmeter"),
      scanners: of("scanner"),
      junctions: of("junction"),
      leads: of("lead"),
      notOffered: runKinds.flatMap((kind) =>
        rows.flatMap(({ id, tag, kind: own }) => {
          const problem = own === kind ? problemOf(kind, id) : null;
          return problem ? [{ id, tag, kind, ...problem }] : [];
        }),
      ),
    };
  });

export type NewRunView = Awaited<ReturnType<typeof newRunView>>;
