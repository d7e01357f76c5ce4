import type { Tx } from "@/lib/data/in-scope";
import { CertificateContent } from "@/lib/domain/certificate/content";
import { readStoredPoint } from "@/lib/domain/evidence/read-stored-point";
import type { Actor } from "@/lib/domain/staff/actor";
import { type Trace, traceCertificate } from "@/lib/domain/trace/trace-certificate";
import { answer, found } from "./view";

/** What became of a standard since: never changes the chain as signed, but somebody should know. */
const laterFlags = async (tx: Tx, trace: Trace, performedTo: string) => {
  const equipment = await tx.equipment.findMany({
    where: { tag: { in: trace.lines.map(({ standard }) => standard.tag) } },
    include: { calibrations: { where: { performedOn: { gt: new Date(`${performedTo}T00:00:00Z`) } } } },
    orderBy: { tag: "asc" },
  });
  return equipment.flatMap(({ tag, state, calibrations }) => [
    ...(state === "in-service" ? [] : [{ tag, text: `is ${state} now` }]),
    ...calibrations.map(({ certificate, performedOn }) => ({
      tag,
      text: `was calibrated again on ${performedOn.toISOString().slice(0, 10)} (${certificate}): compare the two`,
    })),
  ]);
};

/** For each result of the certificate, which references it came from. */
const resultsOf = async (tx: Tx, evaluationId: string, sensorId: string, content: CertificateContent) => {
  const stored = await tx.result.findMany({ where: { evaluationId, sensorId } });
  const points = stored.map(({ point }) => readStoredPoint(point));
  const tags = (role: string) =>
    content.standards.filter((standard) => standard.role === role).map(({ tag }) => tag);
  return content.rows
    .filter((row) => row.state === "measured")
    .map((row) => {
      const point = points.find(
        (one) => one.state === "measured" && one.printed.nominalCelsius === row.nominalCelsius,
      );
      return {
        setpoint: row.setpoint,
        errorCelsius: row.errorCelsius,
        expandedCelsius: row.expandedCelsius,
        references:
          point?.state === "measured"
            ? point.references.map(({ reference }) => reference)
            : tags("reference"),
        voltmeter: tags("voltmeter"),
        scanner: tags("scanner"),
        junctions: tags("junction"),
      };
    });
};

/** The chain of one certificate, as frozen at sign-off. */
export const tracePageView = (actor: Actor, number: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const row = found(await tx.certificate.findUnique({ where: { number } }));
    const content = CertificateContent.parse(JSON.parse(row.content));
    const trace = traceCertificate(content);
    return {
      number,
      item: content.item,
      performedFrom: content.performedFrom,
      performedTo: content.performedTo,
      run: content.run.number,
      statement: content.traceabilityStatement,
      trace,
      results: await resultsOf(tx, row.evaluationId, row.sensorId, content),
      later: await laterFlags(tx, trace, content.performedTo),
    };
  });

export type TracePage = Awaited<ReturnType<typeof tracePageView>>;
