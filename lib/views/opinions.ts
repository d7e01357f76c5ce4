import { loadAuthorisations } from "@/lib/data/authorisation/authorisation-store";
import { opinionsOf } from "@/lib/data/opinion/opinion-store";
import { authorisationState } from "@/lib/domain/authorisation/authorisation";
import { authorisedFor } from "@/lib/domain/authorisation/words";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "./view";

/** Opinions on the sensors of a run under review, and whether this person may write one (ISO/IEC 17025 7.8.7). */
export const opinionsView = (actor: Actor, runNumber: string, now: Date) =>
  answer(actor, "review.read", async (tx) => {
    const run = found(
      await tx.run.findUnique({
        where: { number: runNumber },
        select: { id: true, state: true, places: { select: { sensorId: true } } },
      }),
    );
    const evaluation = await tx.evaluation.findFirst({
      where: { runId: run.id },
      orderBy: { sequence: "desc" },
      select: { id: true },
    });
    const ids = run.places.flatMap(({ sensorId }) => sensorId ?? []);
    const sensors = await tx.sensor.findMany({
      where: { id: { in: ids } },
      select: { id: true, tag: true, serial: true, state: true },
      orderBy: { tag: "asc" },
    });
    const opinions = await opinionsOf(tx, run.id);
    const held = actor.kind === "staff" ? await loadAuthorisations(tx, actor.personId) : [];
    const inForce = held.filter(
      (one) => one.activity === "opinion" && authorisationState(one, now) === "in-force",
    );
    const mayPerson =
      actor.kind === "staff" && may(actor.roles, "opinion.write") && actor.session !== "bench";
    return {
      runId: run.id,
      evaluationId: evaluation?.id ?? "",
      mayWrite: mayPerson && inForce.length > 0 && run.state === "submitted",
      authorisedFor: inForce.map(authorisedFor),
      sensors: sensors.map(({ state, ...sensor }) => {
        const standing = opinions.get(sensor.id);
        return {
          ...sensor,
          isOpen: state === "in-review",
          opinion: standing
            ? {
                ...{ text: standing.text, basis: standing.basis, by: standing.by },
                at: standing.writtenAt.toISOString(),
              }
            : null,
        };
      }),
    };
  });

export type OpinionsPage = Awaited<ReturnType<typeof opinionsView>>;
