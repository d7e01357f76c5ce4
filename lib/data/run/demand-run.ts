import { Refused } from "@/lib/domain/refusal";
import type { Tx } from "../in-scope";
import { loadRunForUpdate, type Run } from "./load-run";

/** The run, locked; or the refusal that it is not there. */
export const demandRun = async (tx: Tx, number: string): Promise<Run> => {
  const run = await loadRunForUpdate(tx, number);
  if (!run) throw new Refused({ code: "not-found", message: `There is no run ${number}.` });
  return run;
};

/** The setpoint by its place in the run. */
export const demandSetpoint = (run: Run, position: number): Run["setpoints"][number] => {
  const setpoint = run.setpoints.find((one) => one.position === position);
  if (!setpoint)
    throw new Refused({ code: "not-found", message: `Run ${run.number} has no setpoint ${position}.` });
  return setpoint;
};
