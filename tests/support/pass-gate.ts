import { loadGatePlan } from "@/lib/data/gate/load-gate-plan";
import { loadRun } from "@/lib/data/run/load-run";
import { assessGate } from "@/lib/domain/gate/assess-gate";
import type { GateAssessment } from "@/lib/domain/gate/assessment";
import type { GatePlan } from "@/lib/domain/gate/plan";
import { execute } from "@/lib/operations/execute";
import { overrideGate } from "@/lib/operations/gate/override";
import { passGate as passGateOperation } from "@/lib/operations/gate/pass";
import { recordBenchChecks } from "@/lib/operations/gate/record-bench-checks";
import { inLaboratory, type RunBench } from "./run-bench";

type Clock = () => Date;

const loadPlan = (run: string, clock: Clock) =>
  inLaboratory(async (tx) => {
    const row = await loadRun(tx, run);
    if (!row) throw new Error(`There is no run ${run}.`);
    return loadGatePlan(tx, row, clock().toISOString().slice(0, 10));
  });

export const gateOf = async (run: string, clock: Clock): Promise<GateAssessment> => {
  const { plan, policy, reasons } = await loadPlan(run, clock);
  return assessGate(plan, policy, reasons);
};

const junctionsOf = ({ places }: GatePlan, thermometer: string) =>
  [...new Map(places.map((place) => [place.junction, place.junctionCelsius ?? 0]))].map(
    ([junction, stated]) => ({ junction, thermometer, thermometerCelsius: stated + 0.01 }),
  );

/** The same-day checks of the load with figures in order, as a technician records them; the junctions where asked. */
export const checkBench = async (
  bench: RunBench,
  run: string,
  clock: Clock,
  hasThermometer = true,
): Promise<void> => {
  const { plan } = await loadPlan(run, clock);
  await execute(
    recordBenchChecks,
    bench.technician,
    {
      run,
      warmUpHours: 2,
      shortedZeroMicrovolt: 0.1,
      voltagePoint: { appliedMicrovolt: 10_000, readMicrovolt: 10_000.4 },
      channels: plan.places.map(({ channel }) => ({ channel, microvolt: 0.2 })),
      junctions: hasThermometer ? junctionsOf(plan, bench.thermometer) : [],
    },
    clock,
  );
};

/** The bench checked, a reason for whatever may be set aside, and the run let through. */
export const passGate = async (bench: RunBench, run: string, clock: Clock): Promise<void> => {
  await checkBench(bench, run, clock);
  const { headings } = await gateOf(run, clock);
  for (const { code, severity, subjects } of headings.flatMap(({ rows }) => rows))
    if (severity === "overridable")
      await execute(
        overrideGate,
        bench.signatory,
        { run, code, subjects: [...subjects], reason: "set aside for this test" },
        clock,
      );
  await execute(passGateOperation, bench.technician, { run }, clock);
};
