import type { Tx } from "../in-scope";

/** A sensor with its intake and its order, by tag. */
export const readSensor = (tx: Tx, tag: string) =>
  tx.sensor.findUnique({
    where: { tag },
    include: {
      intake: true,
      line: {
        include: {
          setpoints: { orderBy: { position: "asc" } },
          order: { include: { customer: { select: { id: true, name: true } } } },
        },
      },
    },
  });

/** The runs that had it in their load, the newest first. */
export const readRunsOfSensor = async (tx: Tx, sensorId: string) => {
  const places = await tx.loadPlace.findMany({
    where: { sensorId },
    include: { run: { select: { id: true, number: true, state: true, createdAt: true } } },
  });
  return places.toSorted((left, right) => right.run.createdAt.getTime() - left.run.createdAt.getTime());
};

/** Its results in the last evaluation of a run, from the lowest setpoint up. */
export const readLastResults = async (tx: Tx, runId: string, sensorId: string) => {
  const evaluation = await tx.evaluation.findFirst({
    where: { runId },
    orderBy: { sequence: "desc" },
    include: { results: { where: { sensorId } } },
  });
  const setpoints = await tx.runSetpoint.findMany({ where: { runId }, orderBy: { position: "asc" } });
  return setpoints.flatMap(({ id, position }) => {
    const result = evaluation?.results.find(({ setpointId }) => setpointId === id);
    return result ? [{ position, point: result.point }] : [];
  });
};
