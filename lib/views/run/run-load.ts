import type { Tx } from "@/lib/data/in-scope";
import { earlierResults } from "@/lib/data/parts/earlier-results";
import type { RunEvidence } from "@/lib/data/run/load-evidence";
import { readBores } from "@/lib/domain/furnace/bores";
import { countingRuleLabels, readLineOptions } from "@/lib/domain/order/options";
import { asCountingRule } from "@/lib/domain/parts/counting-rule";
import { asSetKind } from "@/lib/domain/parts/decide-set";
import { assessTipCheck } from "@/lib/domain/run/tip-check";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer } from "@/lib/views/view";
import { loadHead, runHead } from "./run-head";

/** What the drawing of the load is to scale with. */
const furnaceOf = async (tx: Tx, configurationId: string) => {
  const { bores, furnace } = await tx.furnaceConfiguration.findUniqueOrThrow({
    where: { id: configurationId },
    include: { furnace: true },
  });
  return {
    boreMillimetre: furnace.boreMillimetre,
    lengthMillimetre: furnace.lengthMillimetre,
    bestImmersionMillimetre: furnace.bestImmersionMillimetre ?? undefined,
    bores: readBores(bores),
  };
};

/** Sensors of this load that another run measured already, with the rule of their order that says which will count. */
const repeatsOf = async (tx: Tx, { run, sensors }: RunEvidence) => {
  const made = await tx.repeatMeasurement.findMany({ where: { runId: run.id } });
  return (await earlierResults(tx, run)).map(({ sensorId, tag, earlierRun, isAuthorised }) => {
    const row = made.find((one) => one.sensorId === sensorId);
    const { countingRule } = readLineOptions(sensors.find(({ id }) => id === sensorId)?.line.options ?? "{}");
    return {
      tag,
      earlierRun,
      isAuthorised,
      reason: row?.reason ?? "",
      rule: countingRuleLabels[row ? asCountingRule(row.countingRule) : countingRule],
    };
  });
};

/** The furnace load with its tip checks, and what the run's budget rests on. */
export const runLoadView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const loaded = await loadHead(tx, number, []);
    const { run, evidence, standing, sensors } = loaded;
    return {
      head: await runHead(tx, actor, loaded),
      repeats: await repeatsOf(tx, loaded),
      mayAuthoriseRepeat: actor.kind !== "system" && may(actor.roles, "run.authorise-repeat"),
      configurationKind: evidence.configuration.kind,
      furnace: await furnaceOf(tx, run.configurationId),
      characterisation: evidence.configuration.characterisation,
      places: run.places.map((place) => {
        const sensor = sensors.find(({ id }) => id === place.sensorId);
        const composed = evidence.load.find((one) => one.place === place.place);
        const item = composed?.item;
        const reference =
          item?.kind === "reference" ? evidence.references.find(({ id }) => id === item.id) : undefined;
        const tip = standing.tips.find(({ loadPlaceId }) => loadPlaceId === place.id) ?? null;
        return {
          place: place.place,
          kind: place.kind as "sensor" | "reference" | "shorted",
          tag: sensor?.tag ?? reference?.id ?? "",
          serial: sensor?.serial ?? reference?.serial ?? "",
          type: sensor?.typeLetter ?? reference?.type ?? null,
          customer: sensor?.line.order.customer.name ?? null,
          protection: sensor?.protection ?? reference?.protection ?? null,
          channel: place.channel,
          junction: composed?.junction ?? "",
          junctionCelsius: place.junctionCelsius,
          immersionMillimetre: place.immersionMillimetre,
          set: sensor ? asSetKind(place.setKind) : null,
          tip: tip && { riseMicrovolt: tip.riseMicrovolt, onlyThisChannel: tip.onlyThisChannel },
          tipState: assessTipCheck(tip),
        };
      }),
      standards: [
        ...evidence.references.map((one) => ({
          role: "Reference",
          id: one.id,
          certificate: one.calibration.certificate,
          dueOn: one.calibration.dueOn ?? null,
        })),
        ...(
          [
            ["Voltmeter", evidence.voltmeter],
            ["Scanner", evidence.scanner],
            ...evidence.junctions.map((junction) => ["Reference junction", junction] as const),
          ] as const
        ).map(([role, one]) => ({
          role,
          id: one.id,
          certificate: one.calibration?.certificate ?? null,
          dueOn: one.calibration?.dueOn ?? null,
        })),
      ],
    };
  });

export type RunLoadView = Awaited<ReturnType<typeof runLoadView>>;
