import { loadGatePlan } from "@/lib/data/gate/load-gate-plan";
import { loadPassedGate } from "@/lib/data/gate/load-passed";
import type { Tx } from "@/lib/data/in-scope";
import { isoDay } from "@/lib/domain/calibration/due";
import { assessGate } from "@/lib/domain/gate/assess-gate";
import type { GateAssessment, GateRow } from "@/lib/domain/gate/assessment";
import type { GatePlan } from "@/lib/domain/gate/plan";
import type { GatePolicy } from "@/lib/domain/gate/policy";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { roleLabels } from "@/lib/domain/staff/roles";
import { answer } from "@/lib/views/view";
import { loadHead, runHead } from "./run-head";

const rolesOf = (actor: Actor) => (actor.kind === "system" ? [] : actor.roles);

/** Who may set it aside, in words, and whether this person is one of them. */
const overrideOf = (actor: Actor, { override }: GateRow) =>
  override && {
    by: override.by.map((role) => roleLabels[role].toLowerCase()).join(" or "),
    mayI: may(rolesOf(actor), "gate.override") && override.by.some((role) => rolesOf(actor).includes(role)),
    reachesCertificate: override.reachesCertificate,
  };

const headingsOf = (actor: Actor, { headings }: GateAssessment) =>
  headings.map(({ heading, severity, rows }) => ({
    heading,
    severity,
    rows: rows.map((row) => ({ ...row, override: overrideOf(actor, row) })),
  }));

const countOf = ({ headings }: GateAssessment) => {
  const rows = headings.flatMap((one) => one.rows);
  const of = (test: (row: GateRow) => boolean) => rows.filter(test).length;
  return {
    toMend: of(({ severity }) => severity === "refuse"),
    reasonsLacking: of(({ severity, given }) => severity === "overridable" && given === null),
    reasonsGiven: of(({ given }) => given !== null),
    warnings: of(({ severity }) => severity === "warning"),
  };
};

const thermometersOf = async (tx: Tx) => {
  const rows = await tx.equipment.findMany({
    where: { kind: "thermometer", state: "in-service" },
    select: { tag: true },
    orderBy: { tag: "asc" },
  });
  return rows.map(({ tag }) => tag);
};

/** What the bench form asks for, with what is recorded today. */
const benchOf = ({ places, bench }: GatePlan, policy: GatePolicy) => ({
  ...bench,
  channels: places.map(({ channel, tag }) => ({
    channel,
    item: tag ?? "shorted channel",
    microvolt: bench.channels.find((one) => one.channel === channel)?.microvolt ?? null,
  })),
  junctions: [...new Set(places.map(({ junction }) => junction))].map((junction) => {
    const seen = bench.junctions.find((one) => one.junction === junction);
    return {
      junction,
      statedCelsius: places.find((place) => place.junction === junction)?.junctionCelsius ?? 0,
      thermometer: seen?.thermometer ?? null,
      thermometerCelsius: seen?.thermometerCelsius ?? null,
    };
  }),
  limits: {
    warmUpHours: policy.warmUpHours.value,
    shortedZeroMicrovolt: policy.shortedZeroMicrovolt.value,
    voltagePointMicrovolt: policy.voltagePointMicrovolt.value,
    junctionCelsius: policy.junctionCelsius.value,
  },
});

/** The gate of a run on a day: live before it is passed, as it was passed afterwards. */
export const runGateView = (actor: Actor, number: string, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const loaded = await loadHead(tx, number, []);
    const head = await runHead(tx, actor, loaded);
    const passed = await loadPassedGate(tx, loaded.run.id);
    const day = isoDay(now);
    const { plan, policy, reasons } = await loadGatePlan(tx, loaded.run, day);
    const assessment = assessGate(plan, policy, reasons);
    return {
      head,
      day,
      isBefore: head.state === "planned",
      passed: passed && { ...passed, at: passed.at.toISOString() },
      policy: policy.title,
      verdict: assessment.verdict,
      counts: countOf(assessment),
      headings: headingsOf(actor, assessment),
      bench: benchOf(plan, policy),
      thermometers: await thermometersOf(tx),
    };
  });

export type RunGateView = Awaited<ReturnType<typeof runGateView>>;
